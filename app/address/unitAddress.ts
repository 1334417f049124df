/** Address of the page of one unit, on one of its series if given. */
export function unitAddress(unit: string, series: string | null = null): string {
  const query = new URLSearchParams({ id: unit });
  if (series !== null && series !== '') query.set('series', series);
  return `/unit/?${query}`;
}
