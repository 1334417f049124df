/** Decisions at overhauls, demand of spares, orders and the interval curve. */
export function SparesMethods() {
  return (
    <>
      <h2 id="decisions">What to do at an overhaul</h2>
      <p>For each limit, with the accepted risk as set (10&nbsp;% unless changed):</p>
      <ul>
        <li>
          bring forward, if the chance of passing the limit before the planned overhaul exceeds the accepted
          risk; the day is the last on which it does not;
        </li>
        <li>
          otherwise fit the part that renews the series, or correct it at assembly, if the chance of passing
          the limit before the following overhaul exceeds the accepted risk;
        </li>
        <li>
          measure again, in place of either, where one more reading would take away more than half of the
          variance of the level and would turn the decision with a chance of at least 20&nbsp;%;
        </li>
        <li>otherwise run on.</li>
      </ul>
      <p>
        The weightiest of a unit&rsquo;s limits decides, and the end of the rated life forces the part.
        Decisions about later overhauls suppose that the advice for the earlier ones was followed. Each is an
        aid: the maker&rsquo;s manual and the inspection come first.
      </p>
      <h2 id="spares">Demand and orders</h2>
      <p>
        Lines are drawn from the mixture with a fixed seed, so that the same data give the same answer on
        every machine. In each draw every unit is carried through its planned overhauls: a reading as found is
        drawn, what is believed of the run is updated by it, parts are fitted by the rule above, and new parts
        start new runs. Units of a group share the group&rsquo;s wear in each draw, so that a fleet that wears
        faster than thought needs more of everything at once. Consumables follow the overhauls.
      </p>
      <p>
        A part is short on the first day on which the demand up to then exceeds what is on hand and due with a
        chance over 1 − service level. The last order day is that day less the lead time; the quantity is the
        fewest pieces that keep the service level over lead time plus review period. What-if plans are walked
        through the same draws, so that what differs is the change and not chance.
      </p>
      <h2 id="interval-curve">Interval curve</h2>
      <p>
        Every running unit of a group is carried through four equal intervals from new, for each interval
        looked at. The curve compares intervals by measured wear alone. The interval is the maker&rsquo;s and
        class&rsquo;s to change, and an extrapolation never authorises a longer one.
      </p>
    </>
  );
}
