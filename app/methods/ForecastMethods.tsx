/** Margins, dates, expected readings, and the check by the unit's own line. */
export function ForecastMethods() {
  return (
    <>
      <h2 id="margin">Margin, early, median and late</h2>
      <p>
        The margin is the limit minus the level for an upper limit, the level minus the limit for a lower one.
        The chance that a limit is met by a date is the probability, under the mixture, that the level is at
        or past the limit at the run hours of that date. Early, median and late are the hours at which this
        chance is 10, 50 and 90&nbsp;%; where it does not get there within 100&nbsp;000&nbsp;h the answer is
        &lsquo;beyond&rsquo;, never a number. A level that is past its limit with a chance over 90&nbsp;% is
        called past limit, with 0&nbsp;h left.
      </p>
      <p>
        Dates follow from hours by the hours per year of the plan, or, without a plan, by those between the
        unit&rsquo;s own overhauls; the page says which.
      </p>
      <h2 id="expected-reading">Expected reading</h2>
      <p>
        The reading expected as found at the next overhaul is the level then plus the noise of one reading:
        its 10, 50 and 90&nbsp;% points. One reading in ten is expected above the range and one in ten below
        it.
      </p>
      <h2 id="own-line">The unit&rsquo;s own line</h2>
      <p>
        Beside the sister-informed band stands the unit&rsquo;s own straight line through its readings in the
        current run, by ordinary least squares, with the 80&nbsp;% prediction interval of a further reading by
        Student&rsquo;s <var>t</var>. It needs 3 readings. The median of the slopes between all pairs of
        readings (Theil 1950, Sen 1968) stands by as a check that one wild reading cannot turn.
      </p>
    </>
  );
}
