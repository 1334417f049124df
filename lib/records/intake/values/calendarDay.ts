import { getDaysInMonth } from 'date-fns';

/** ISO date of a day of the calendar, or null if there is no such day (31 April) or its year is not 1900 to 2100. */
export function calendarDay(year: number, month: number, day: number): string | null {
  if (year < 1900 || year > 2100 || month < 1 || month > 12 || day < 1) return null;
  if (day > getDaysInMonth(new Date(year, month - 1, 1))) return null;
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/** ISO date of a spreadsheet's serial number: days since 1899-12-30, in UTC so that no time zone moves it. */
export function dayOfSerial(days: number): string {
  return new Date(Date.UTC(1899, 11, 30 + Math.floor(days))).toISOString().slice(0, 10);
}
