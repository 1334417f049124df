/**
 * Benjamini and Hochberg's q-values: the smallest share of false findings at which each is still a finding.
 *
 * With the probabilities in rising order, q = smallest of p(j) m / j over this and all larger ones, at most 1; in
 * the order given. Throws if a probability is not from 0 to 1.
 * Benjamini and Hochberg 1995, Journal of the Royal Statistical Society B 57, 289.
 */
export function falseDiscovery(probabilities: readonly number[]): readonly number[] {
  if (!probabilities.every((p) => p >= 0 && p <= 1)) {
    throw new Error('falseDiscovery requires probabilities from 0 to 1, got others');
  }
  const order = probabilities.map((_, k) => k).sort((one, other) => at(other) - at(one));
  function at(k: number): number {
    return probabilities[k] as number;
  }
  const m = probabilities.length;
  const q = new Array<number>(m).fill(1);
  let least = 1;
  order.forEach((k, fromLargest) => {
    least = Math.min(least, (at(k) * m) / (m - fromLargest));
    q[k] = least;
  });
  return q;
}
