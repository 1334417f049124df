/** Upper ends of the duties in hours a year, and their names. */
const duties = [
  { below: 2_000, name: 'under 2,000 h a year' },
  { below: 4_000, name: '2,000 to 4,000 h a year' },
  { below: 6_000, name: '4,000 to 6,000 h a year' },
  { below: Number.POSITIVE_INFINITY, name: 'over 6,000 h a year' },
] as const;

/** Duty of a unit by the hours that its engine runs a year, or null where they are not known. */
export function dutyOf(hoursPerYear: number | null): string | null {
  if (hoursPerYear === null) return null;
  return duties.find(({ below }) => hoursPerYear < below)?.name ?? null;
}
