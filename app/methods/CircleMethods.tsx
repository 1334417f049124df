/** What four clock readings say of the whole circle, and how far readings repeat. */
export function CircleMethods() {
  return (
    <>
      <h2 id="clearance-circle">Clearance circle</h2>
      <p>
        With the mean <var>m</var>, the offsets <var>h</var> and <var>v</var> and the ovality <var>o</var> = (
        <var>c</var>
        <sub>12</sub> + <var>c</var>
        <sub>6</sub> − <var>c</var>
        <sub>3</sub> − <var>c</var>
        <sub>9</sub>) / 4, the gap at the angle <var>p</var>, clockwise from 12 o&rsquo;clock as seen from the
        compressor end, is
      </p>
      <p>
        gap(<var>p</var>) = <var>m</var> + <var>v</var> cos <var>p</var> + <var>h</var> sin <var>p</var> +{' '}
        <var>o</var> cos 2<var>p</var>
      </p>
      <p>
        Its minimum over <var>p</var> is the smallest gap round the circle, which may lie between two clock
        positions. If one reading has the noise <var>s</var>, the standard deviations are <var>s</var>/2 for
        the mean and the ovality and <var>s</var>/√2 for each offset. From three positions mean and offset
        follow with an ovality of zero, and the page says so. Four readings at 90° cannot show a lobe narrower
        than that.
      </p>
      <h2 id="repeatability">Gauge repeatability</h2>
      <p>
        Two readings of one state, as found and as left with no reset between, differ by gauge and hand alone.
        From <var>n</var> such pairs with differences <var>d</var>, after a test that their mean is zero,
      </p>
      <p>
        <var>s</var> = √( sum <var>d</var>² / (2<var>n</var>) )
      </p>
      <p>
        with a 90&nbsp;% interval by chi-square with <var>n</var> degrees of freedom; by series, by workshop,
        and pooled.
      </p>
    </>
  );
}
