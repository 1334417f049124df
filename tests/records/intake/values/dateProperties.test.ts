import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateOrder } from '../../../../lib/records/intake/values/dateOrder';
import type { SettledOrder } from '../../../../lib/records/intake/values/orderedDate';
import { readDate } from '../../../../lib/records/intake/values/readDate';

const runs = { numRuns: 3000, seed: 20260102 };
const orders = ['year first', 'day first', 'month first'] as const;

/** Years that a two-digit year can mean. */
const day = fc.date({ min: new Date('1950-01-01'), max: new Date('2049-12-31'), noInvalidDate: true });
const isoOf = (date: Date) => date.toISOString().slice(0, 10);

interface Style {
  readonly order: SettledOrder;
  readonly separator: string;
  readonly isPadded: boolean;
  readonly hasShortYear: boolean;
}

const style: fc.Arbitrary<Style> = fc.record({
  order: fc.constantFrom(...orders),
  separator: fc.constantFrom('-', '/', '.', ' '),
  isPadded: fc.boolean(),
  hasShortYear: fc.boolean(),
});

function write(iso: string, { order, separator, isPadded, hasShortYear }: Style): string {
  const [year = '', month = '', dayOfMonth = ''] = iso.split('-');
  const short = (part: string) => (isPadded ? part : String(Number(part)));
  const [y, m, d] = [hasShortYear ? year.slice(2) : year, short(month), short(dayOfMonth)];
  const parts = { 'year first': [y, m, d], 'day first': [d, m, y], 'month first': [m, d, y] }[order];
  return parts.join(separator);
}

describe('dates in every writing', () => {
  it('come back equal under their own order', () => {
    const time = fc.constantFrom('', ' 08:15', 'T23:59:59Z', ' 8:15 PM', ' 00:00:00.000', ' 14:15 Uhr');
    fc.assert(
      fc.property(day, style, time, (date, writing, timeOfDay) => {
        const iso = isoOf(date);
        expect(readDate(write(iso, writing) + timeOfDay, writing.order)).toMatchObject({ kind: 'date', iso });
      }),
      runs,
    );
  });

  it('come back equal with month names as the Unicode locale data write them, whatever the order', () => {
    const locale = fc.constantFrom('en-US', 'en-GB', 'de-DE', 'de-AT', 'fr-FR', 'es-ES', 'nb-NO', 'ru-RU');
    const month = fc.constantFrom('long' as const, 'short' as const);
    fc.assert(
      fc.property(day, locale, month, fc.constantFrom(...orders), (date, language, length, order) => {
        const written = new Intl.DateTimeFormat(language, {
          day: 'numeric',
          month: length,
          year: 'numeric',
          timeZone: 'UTC',
        }).format(date);
        expect([written, readDate(written, order)]).toEqual([
          written,
          { kind: 'date', iso: isoOf(date), note: null },
        ]);
      }),
      runs,
    );
  });

  it('that are no day of the calendar never roll over into another', () => {
    const number = (max: number) => fc.integer({ min: 0, max });
    fc.assert(
      fc.property(
        fc.integer({ min: 1900, max: 2100 }),
        number(14),
        number(33),
        style,
        (year, month, dayOfMonth, writing) => {
          const iso = `${year}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
          const isDay =
            !Number.isNaN(Date.parse(`${iso}T00:00:00Z`)) && isoOf(new Date(`${iso}T00:00:00Z`)) === iso;
          const reading = readDate(write(iso, { ...writing, hasShortYear: false }), writing.order);
          if (isDay) expect(reading).toMatchObject({ kind: 'date', iso });
          else expect(reading.kind).not.toBe('date');
        },
      ),
      runs,
    );
  });

  it('as spreadsheet serials are asked as that day, counted here by the milliseconds since 1970', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20000, max: 80000 }), (days) => {
        // 25569 days lie between 1899-12-30 and 1970-01-01.
        const iso = isoOf(new Date((days - 25569) * 86_400_000));
        expect(readDate(String(days), 'day first')).toMatchObject({ kind: 'ask', iso });
      }),
      runs,
    );
  });
});

describe('dateOrder of a column in one writing', () => {
  it('is that order, or open, or makes no difference to any date', () => {
    const writing = style.filter(
      ({ order, separator, hasShortYear }) =>
        !(separator === '.' && order === 'month first') &&
        !(order === 'year first' && hasShortYear && separator !== '-'),
    );
    let settled = 0;
    fc.assert(
      fc.property(fc.array(day, { minLength: 1, maxLength: 6 }), writing, (dates, how) => {
        const texts = dates.map((date) => write(isoOf(date), how));
        const { order } = dateOrder(texts);
        if (order === 'open') return;
        settled += 1;
        for (const [index, date] of dates.entries())
          expect(readDate(texts[index] ?? '', order)).toMatchObject({ kind: 'date', iso: isoOf(date) });
      }),
      runs,
    );
    expect(settled).toBeGreaterThan(1500);
  });
});
