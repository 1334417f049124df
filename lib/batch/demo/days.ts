/** Days are whole numbers since 1970-01-01, so that no time zone can move a date. */
const millisecondsPerDay = 86_400_000;

/** Day number of an ISO date. */
export function dayOf(iso: string): number {
  return Math.round(Date.parse(`${iso}T00:00:00Z`) / millisecondsPerDay);
}

/** ISO date of a day number. */
export function isoOf(day: number): string {
  return new Date(day * millisecondsPerDay).toISOString().slice(0, 10);
}

/** Calendar year of a day number. */
export function yearOf(day: number): number {
  return Number(isoOf(day).slice(0, 4));
}

export const daysPerYear = 365.25;
