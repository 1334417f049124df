import type { DateOrder } from '../types';

export type SettledOrder = Exclude<DateOrder, 'open'>;

/** Year, month and day as numbers, and whether the year was written with two digits; not yet checked to be a day. */
export interface OrderedDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly twoDigitYear: string | null;
}

type Parts = readonly [string, string, string];

/** 00 to 49 are 2000 to 2049, 50 to 99 are 1950 to 1999. */
export const fullYear = (twoDigits: string): number =>
  Number(twoDigits) + (Number(twoDigits) < 50 ? 2000 : 1900);

export function dateOf(year: string, month: string | number, day: string): OrderedDate | null {
  if (day.length > 2 || (year.length !== 4 && year.length !== 2)) return null;
  const isShort = year.length === 2;
  return {
    year: isShort ? fullYear(year) : Number(year),
    month: Number(month),
    day: Number(day),
    twoDigitYear: isShort ? year : null,
  };
}

/** Three written numbers put into an order; null if the year would not have two or four digits there. */
export function inOrder([first, second, third]: Parts, order: SettledOrder): OrderedDate | null {
  if (order === 'year first') return dateOf(first, second, third);
  return order === 'day first' ? dateOf(third, second, first) : dateOf(third, first, second);
}

/**
 * Orders that three written numbers allow, by months of 1 to 12 and days of 1 to 31. A two-digit year is taken to come
 * first only between hyphens ('16-04-03'): with slashes and dots the six languages put it last.
 */
export function allowedOrders(parts: Parts, separator: string): readonly SettledOrder[] {
  return (['year first', 'day first', 'month first'] as const).filter((order) => {
    const date = inOrder(parts, order);
    if (date === null || (order === 'year first' && date.twoDigitYear !== null && separator !== '-'))
      return false;
    return date.month >= 1 && date.month <= 12 && date.day >= 1 && date.day <= 31;
  });
}
