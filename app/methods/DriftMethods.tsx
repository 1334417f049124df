/** Forecast residuals, charts on them, and what a signal costs. */
export function DriftMethods() {
  return (
    <>
      <h2 id="forecast-residuals">Forecast residuals</h2>
      <p>
        Every reading is compared with what was foretold for it from the earlier readings of its own unit and
        from all other units. With <var>F</var> the foretold distribution, gauge noise included,
      </p>
      <p>
        <var>z</var> = normal quantile of <var>F</var>(reading)
      </p>
      <p>
        While nothing has changed, <var>z</var> is standard normal whatever the unit, the hours since the last
        opening or the number of readings before; a unit with one reading has one too.
      </p>
      <h2 id="charts">Charts of drift</h2>
      <ul>
        <li>Individuals: one reading beyond the threshold.</li>
        <li>
          Exponentially weighted moving average: <var>w</var> = 0.2 <var>z</var> + 0.8 (<var>w</var> before),
          from 0, with limits by its exact standard deviation √(0.2/1.8 · (1 − 0.8<sup>2t</sup>)) at reading{' '}
          <var>t</var> (Roberts 1959; Lucas and Saccucci 1990, Technometrics 32, 1).
        </li>
        <li>
          Cumulative sum: <var>S</var> = max(0, <var>S</var> before + <var>z</var> − 0.5), and the mirrored
          one below (Page 1954, Biometrika 41, 100). Its last zero before a signal estimates when the shift
          began.
        </li>
        <li>
          Individuals with moving range of the readings in mm: limits mean ± 3 × mean moving range / 1.128,
          and 3.267 × mean moving range for the range (ISO 7870-2), from a stated baseline.
        </li>
      </ul>
      <p>A size that cannot be negative, such as runout, is watched on its upper side only.</p>
      <h2 id="budget">Budget of false signals</h2>
      <p>
        The thresholds are not fixed numbers of standard deviations. They are solved so that, if nothing ever
        changed, the whole fleet would raise as many signals a year as the budget says. The chance of a signal
        at each reading of a history is computed by numerical integration of the chart&rsquo;s state, from the
        start of the history and again after each signal, for the number of readings that each unit really
        has; the budget is shared between the kinds of chart in force. Run rules (ISO 7870-2) have no
        threshold to solve: they are off unless chosen, and each shows what it adds.
      </p>
      <h2 id="pattern">Persisting or vanishing</h2>
      <p>
        A rise as found that is gone as left points to seating or to dirt in the contact faces; one that
        persists through reassembly points to the shaft. The page says which pattern the readings show, or
        that they show neither, and leaves the finding to the engineer.
      </p>
      <h2 id="as-left">Workshops as left</h2>
      <p>
        What a workshop leaves behind is held against the assembly range: Ppk = the smaller of (upper − mean)
        / 3<var>s</var> and (mean − lower) / 3<var>s</var> (ISO 22514-2), with the interval Ppk ± <var>z</var>{' '}
        √(1 / 9<var>n</var> + Ppk² / 2(<var>n</var> − 1)) (Bissell 1990, Applied Statistics 39, 331). Below 5
        readings there is none.
      </p>
    </>
  );
}
