/** Address of the bench sheet of one unit. */
export function benchAddress(unit: string): string {
  return `/bench/?${new URLSearchParams({ id: unit })}`;
}
