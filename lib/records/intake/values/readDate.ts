import { calendarDay, dayOfSerial } from './calendarDay';
import { dateOf, inOrder, type OrderedDate, type SettledOrder } from './orderedDate';
import { type DateParts, splitDate } from './splitDate';

/** How a cell's text was read as a date; iso is YYYY-MM-DD. */
export type DateReading =
  | { readonly kind: 'date'; readonly iso: string; readonly note: string | null }
  /** Likely this day, to be confirmed. */
  | { readonly kind: 'ask'; readonly iso: string; readonly reason: string }
  | { readonly kind: 'none'; readonly word: string | null }
  | { readonly kind: 'held'; readonly reason: string };

const isoOf = (date: OrderedDate | null) => date && calendarDay(date.year, date.month, date.day);

function checked(date: OrderedDate, notes: readonly string[], latest: string | undefined): DateReading {
  const iso = isoOf(date);
  if (iso === null) {
    if (date.year < 1900 || date.year > 2100)
      return { kind: 'held', reason: `the year ${date.year} is not 1900 to 2100` };
    return date.month < 1 || date.month > 12
      ? { kind: 'held', reason: `${date.month} is no month` }
      : {
          kind: 'held',
          reason: `day ${date.day} of month ${date.month} of ${date.year} is no day of the calendar`,
        };
  }
  if (date.twoDigitYear === null)
    return { kind: 'date', iso, note: notes.length === 0 ? null : notes.join('; ') };
  if (latest !== undefined && iso > latest)
    return {
      kind: 'ask',
      iso,
      reason: `two-digit year ${date.twoDigitYear} read as ${date.year}: after ${latest}`,
    };
  return { kind: 'date', iso, note: [`two-digit year read as ${date.year}`, ...notes].join('; ') };
}

type Numeric = Extract<DateParts, { kind: 'numeric' }>;

function readNumeric(
  { parts, notes }: Numeric,
  order: SettledOrder,
  latest: string | undefined,
): DateReading {
  const hasYearInFront = parts[0].length === 4;
  const date = inOrder(parts, hasYearInFront ? 'year first' : order);
  if (date !== null && (hasYearInFront || order === 'year first' || isoOf(date) !== null))
    return checked(date, notes, latest);
  const dayFirst = inOrder(parts, 'day first');
  const others = [isoOf(dayFirst), isoOf(inOrder(parts, 'month first'))].filter((iso) => iso !== null);
  const [iso, second] = [...new Set(others)];
  // '31.04.2021' day first: no other order makes it a day, so the settled order's own reason is given.
  const asWritten = date ?? dayFirst;
  if (iso === undefined)
    return asWritten === null
      ? { kind: 'held', reason: 'no year of two or four digits' }
      : checked(asWritten, notes, latest);
  const reason =
    second === undefined ? `not written ${order}` : `not written ${order}; day and month may be either way`;
  return { kind: 'ask', iso, reason };
}

type Named = Extract<DateParts, { kind: 'named' }>;

function readNamed(
  { numbers, month, monthAt, notes }: Named,
  order: SettledOrder,
  latest: string | undefined,
): DateReading {
  const [first, second] = numbers;
  const isYearInFront = monthAt === 1 && first.length === 4;
  const date = isYearInFront ? dateOf(first, month, second) : dateOf(second, month, first);
  if (date === null) return { kind: 'held', reason: 'no year of two or four digits' };
  const reading = checked(date, notes, latest);
  const isEitherWay = monthAt === 1 && order === 'year first' && date.twoDigitYear !== null;
  if (reading.kind !== 'date' || !isEitherWay) return reading;
  return { kind: 'ask', iso: reading.iso, reason: 'the first or the last number may be the year' };
}

/**
 * Reads a date from a cell's text under the column's order. A four-digit year in front and a month by name need no
 * order. Asked: spreadsheet serials 20000 to 80000 (days since 1899-12-30), a date that only another order makes
 * a day, a two-digit year (00-49 are 20xx, 50-99 are 19xx) that falls after `latest` (ISO). Held: what is no day of
 * the calendar (31.04.2021 does not roll over), years outside 1900 to 2100, anything not written as a date.
 */
export function readDate(text: string, order: SettledOrder, latest?: string): DateReading {
  const split = splitDate(text);
  switch (split.kind) {
    case 'numeric':
      return readNumeric(split, order, latest);
    case 'named':
      return readNamed(split, order, latest);
    case 'serial': {
      const iso = dayOfSerial(split.days);
      return {
        kind: 'ask',
        iso,
        reason: `a spreadsheet's serial number: ${iso} if it counts days since 1899-12-30`,
      };
    }
    default:
      return split;
  }
}
