/** How a unit is compared with its sisters, and sites, duties and workshops with each other. */
export function SisterMethods() {
  return (
    <>
      <h2 id="sisters">Unlike its sisters</h2>
      <p>
        With <var>b</var>
        <sub>1</sub> the wear rate of the group and <var>u</var> what sets the unit apart, the rate ratio is
      </p>
      <p>
        (<var>b</var>
        <sub>1</sub> + <var>u</var>) / <var>b</var>
        <sub>1</sub>
      </p>
      <p>
        Its 80 and 95&nbsp;% intervals come from the mixture, both rates being uncertain together (after
        Fieller 1954, Journal of the Royal Statistical Society B 16, 175). Where the group&rsquo;s own rate
        may be zero there is no ratio, and the difference stands alone. The tail probability is twice the
        smaller chance of lying above or below the sisters&rsquo; rate. With many units some lie far out by
        chance: the <var>q</var> value is the smallest share of false findings, among all units of the series,
        at which this one would still count (Benjamini and Hochberg 1995, Journal of the Royal Statistical
        Society B 57, 289).
      </p>
      <p>
        The ratio leans on the sisters, so that a unit with two readings is not called out. The funnel does
        not: it shows the rate from the unit&rsquo;s own readings against how well they pin it down, with 95
        and 99.8&nbsp;% limits from the spreads between units and runs and the noise. Start levels are
        compared in the same way.
      </p>
      <h2 id="differences">Sites, duties and workshops</h2>
      <p>
        The mean of each level, in standard deviations, is held against limits that all means keep at once
        with 95&nbsp;% if levels do not differ: analysis of means (Ott 1967, Industrial Quality Control 24,
        101; Nelson 1982, Journal of Quality Technology 14, 21). Sites and duties are compared by the
        units&rsquo; own rates and start levels, workshops by the forecast residuals of what they leave. A
        difference says that levels differ, not why.
      </p>
    </>
  );
}
