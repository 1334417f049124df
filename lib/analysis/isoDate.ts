import {
  addDays,
  addMonths,
  differenceInCalendarDays,
  formatISO,
  isValid,
  parseISO,
  startOfQuarter,
} from 'date-fns';

/** Days of a mean year: hours per year are spread over them. */
export const daysPerYear = 365.25;

/** Days that are kept: a fleet names the same some thousands over and over. */
const mostKept = 20_000;
const kept = new Map<string, Date>();

function dateOf(text: string): Date {
  const known = kept.get(text);
  if (known !== undefined) return known;
  if (kept.size >= mostKept) kept.clear();
  const date = parseISO(text);
  kept.set(text, date);
  return date;
}

/** Whether a text is a day of the calendar, YYYY-MM-DD. */
export function isIsoDay(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && isValid(parseISO(text));
}

/** The day `days` (rounded down) after an ISO date. */
export function isoDatePlus(date: string, days: number): string {
  return formatISO(addDays(dateOf(date), Math.floor(days)), { representation: 'date' });
}

/** Days from one ISO date to another. */
export function daysBetween(from: string, to: string): number {
  return differenceInCalendarDays(dateOf(to), dateOf(from));
}

/** First day of a quarter, and how far ahead it lies. */
export interface QuarterAhead {
  readonly date: string;
  /** Years of 365.25 days from the day asked from. */
  readonly years: number;
}

/** First days of the quarters after an ISO date, `count` of them. */
export function quartersAfter(date: string, count: number): readonly QuarterAhead[] {
  const first = startOfQuarter(dateOf(date));
  return Array.from({ length: count }, (_, index) => {
    const quarter = formatISO(addMonths(first, 3 * (index + 1)), { representation: 'date' });
    return { date: quarter, years: daysBetween(date, quarter) / daysPerYear };
  });
}
