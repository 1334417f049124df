/** How series combine into the chance of a unit, and into the order of the Fleet page. */
export function FleetMethods() {
  return (
    <>
      <h2 id="chance-of-a-unit">Chance of a unit</h2>
      <p>
        The strip of a unit joins all its series that have a limit. Series of one characteristic share their
        readings, so of each characteristic only the largest chance <var>p</var> counts; characteristics are
        taken as independent:
      </p>
      <p>chance that the first limit is met = 1 − product over characteristics of (1 − largest p)</p>
      <p>
        Where characteristics wear together this is somewhat too high. Where a series with a limit has no
        forecast it is a lower bound, marked ≥. The strip supposes that nothing is renewed on the way.
      </p>
      <p>
        The Fleet page puts first the units that are past a limit now, then those with the highest chance at
        their next planned overhaul, in whole percents, then those with the earliest early date. The series
        that decides is chosen by the same chance and date.
      </p>
    </>
  );
}
