/** When there is no forecast, what bounds one, and what none of them covers. */
export function TrustMethods() {
  return (
    <>
      <h2 id="no-forecast">When there is no forecast</h2>
      <p>There is none, and the page says why, if</p>
      <ul>
        <li>the sister group has under 2 units with 2 readings in a run, or under 7 readings;</li>
        <li>
          every run has its readings at the same two hours in all units, so that noise and spread cannot be
          told apart;
        </li>
        <li>the hours of the unit, or the start of its run, are not known;</li>
        <li>the unit has no overhaul on record.</li>
      </ul>
      <p>
        Without hours per year there are hours but no dates. Without a limit there is a level but no verdict.
      </p>
      <h2 id="capped">Capped and extrapolated</h2>
      <p>
        Early, median and late are capped by the rated life of the unit where one is given: the date then
        stands for the end of the rated life. A forecast that reaches beyond the longest run hours ever
        observed in the group is an extrapolation and says so. It never authorises a longer interval.
      </p>
      <h2 id="not-covered">What is not covered</h2>
      <ul>
        <li>
          Wear that is not straight. Curvature is tested and reported under each series; readings that
          accelerate or wander cost the 80&nbsp;% intervals 1 to 6 points of their coverage in simulations.
        </li>
        <li>
          Sudden damage: a foreign body, loss of oil, overspeed, surge, a crack. No trend foretells them.
        </li>
        <li>Blades, casings, nozzle rings, seals and anything else that nobody measured.</li>
        <li>
          Readings wrong in the same way everywhere: a gauge out of calibration, a table for another frame.
        </li>
        <li>A change of duty, fuel or workshop practice after the last reading.</li>
      </ul>
    </>
  );
}
