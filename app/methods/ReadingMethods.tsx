/** How readings become series and runs, and how noisy they are. */
export function ReadingMethods() {
  return (
    <>
      <h2 id="series">Series</h2>
      <p>
        A series is one number followed over time. A characteristic measured once an overhaul (thrust play,
        runout, nut stand-out) is a series as it stands. One measured at four clock positions gives four
        series: the largest and the smallest of the four, their mean
      </p>
      <p>
        <var>m</var> = (<var>c</var>
        <sub>12</sub> + <var>c</var>
        <sub>3</sub> + <var>c</var>
        <sub>6</sub> + <var>c</var>
        <sub>9</sub>) / 4
      </p>
      <p>
        and the offset of the rotor in its casing, √(<var>h</var>² + <var>v</var>²) with <var>h</var> = (
        <var>c</var>
        <sub>3</sub> − <var>c</var>
        <sub>9</sub>) / 2 and <var>v</var> = (<var>c</var>
        <sub>12</sub> − <var>c</var>
        <sub>6</sub>) / 2. At rest the rotor lies low in its bearings: a steady vertical offset is normal, its
        change is not.
      </p>
      <h2 id="runs">Runs</h2>
      <p>
        A run is a stretch of hours over which a series is expected to move steadily. It starts where the
        series is reset: by every assembly, or only by fitting a named part, as the limits table says. Run
        hours count from there. A reading as left after the resetting part was fitted starts the new run; the
        one as found ends the old. No line is drawn, and nothing is fitted, across a reset.
      </p>
      <h2 id="gauge-noise">Gauge noise and interval readings</h2>
      <p>
        The level of a series is its value free of gauge noise. The noise is part of the model below and is
        estimated with it. An interval reading, such as a feeler that goes at one thickness and not at the
        next, enters as its midpoint with the variance (upper − lower)² / 12 added to its noise.
      </p>
    </>
  );
}
