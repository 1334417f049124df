/** An interval about a median: 0.1 to either side at 80 %, 0.2 at 95 %. */
export const interval = (median: number) => ({
  median,
  lower80: median - 0.1,
  upper80: median + 0.1,
  lower95: median - 0.2,
  upper95: median + 0.2,
});
