import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import {
  formatCount,
  formatDate,
  formatFixed,
  formatLevel,
  formatMoment,
  formatPercent,
  formatProbability,
  formatRate,
  formatSignificant,
  typedNumber,
} from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import {
  type NumberStyleName,
  numberStyles,
  plainWriting,
  setWriting,
  type WritingStyle,
  writingInForce,
  writtenIn,
} from '../../lib/charts/writingStyle';

const written = (style: Partial<WritingStyle>, write: () => string) =>
  writtenIn({ ...plainWriting, ...style }, write);

afterEach(() => setWriting(plainWriting));

describe('numbers, against what the language rules of the platform write', () => {
  const locales: readonly (readonly [NumberStyleName, string, boolean])[] = [
    ['comma-point', 'en-GB', true],
    ['point-comma', 'de-DE', true],
    ['apostrophe-point', 'de-CH', true],
    ['space-comma', 'fr-FR', true],
    ['plain-point', 'en-GB', false],
    ['plain-comma', 'de-DE', false],
  ];
  test.each(locales)('%s as in %s', (numbers, locale, useGrouping) => {
    const value = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(value, fc.integer({ min: 0, max: 4 }), (given, decimals) => {
        // Both round halves, but not the same ones: a value that is written out has none.
        const number = Number(given.toFixed(decimals));
        const intl = new Intl.NumberFormat(locale, {
          useGrouping,
          minimumFractionDigits: decimals,
          maximumFractionDigits: decimals,
          signDisplay: 'negative',
        });
        expect(written({ numbers }, () => formatFixed(number, decimals))).toBe(
          // The language data of some years write the apostrophe of a typewriter.
          intl.format(number).replace('-', '\u2212').replaceAll("'", '\u2019'),
        );
      }),
    );
  });

  test('every style reads back as the number that was written', () => {
    for (const [name, { thousands, decimal }] of Object.entries(numberStyles)) {
      const text = written({ numbers: name as NumberStyleName }, () => formatFixed(-1_234_567.25, 2));
      const read = text
        .replace('\u2212', '-')
        .replaceAll(thousands === '' ? /$^/g : thousands, '')
        .replace(decimal, '.');
      expect(Number(read), name).toBe(-1_234_567.25);
    }
  });

  test('lengths, rates, shares and scores follow', () => {
    const german = { numbers: 'point-comma' } as const;
    expect(written(german, () => formatLevel(0.3124, 0.0119))).toBe('0,312\u00a0±\u00a00,012\u00a0mm');
    expect(written(german, () => formatRate(0.0812, null))).toBe('0,081\u00a0mm per 10.000\u00a0h');
    expect(written(german, () => formatPercent(0.995))).toBe('99,5\u00a0%');
    expect(written(german, () => formatPercent(0.12345, 1))).toBe('12,3\u00a0%');
    expect(written(german, () => formatCount(1204))).toBe('1.204');
    expect(written(german, () => formatProbability(0.0004))).toBe('<0,001');
  });

  test('what is typed stays as a field reads it', () => {
    expect(written({ numbers: 'point-comma' }, () => typedNumber(1234.5678))).toBe('1234.57');
  });

  test('significant digits without zeros after them', () => {
    expect([12.345, 0.1, 5, 1200, 0.00123456, 120_000].map((value) => formatSignificant(value, 3))).toEqual([
      '12.3',
      '0.1',
      '5',
      '1\u202f200',
      '0.00123',
      '120\u202f000',
    ]);
    expect(formatSignificant(Number.NaN, 2)).toBe('–');
  });
});

describe('days', () => {
  const days = fc
    .date({ min: new Date('1990-01-01'), max: new Date('2100-12-31'), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10));
  const intl = (locale: string, month: 'short' | '2-digit') =>
    new Intl.DateTimeFormat(locale, {
      day: month === 'short' ? 'numeric' : '2-digit',
      month,
      year: 'numeric',
      timeZone: 'UTC',
    });

  test('day, month and year as in Germany and Britain', () => {
    fc.assert(
      fc.property(days, (day) => {
        const date = new Date(day);
        expect(written({ dates: 'points' }, () => formatDate(day))).toBe(
          intl('de-DE', '2-digit').format(date),
        );
        expect(written({ dates: 'strokes' }, () => formatDate(day))).toBe(
          intl('en-GB', '2-digit').format(date),
        );
        const named = intl('en-GB', 'short').format(date).replace('Sept', 'Sep').replaceAll(' ', '\u00a0');
        expect(written({ dates: 'named' }, () => formatDate(day))).toBe(named);
        expect(written({ dates: 'iso' }, () => formatDate(day))).toBe(day);
      }),
    );
  });

  test('a moment keeps its time', () => {
    expect(written({ dates: 'points' }, () => formatMoment('2026-03-01T08:00:59.000Z'))).toBe(
      '01.03.2026 08:00 UTC',
    );
  });

  test('what is no day is a dash in every style', () => {
    for (const dates of ['iso', 'points', 'strokes', 'named'] as const)
      expect(written({ dates }, () => formatDate('2026-3-1'))).toBe('–');
  });
});

describe('the style in force', () => {
  test('comes back after another one, even after an error', () => {
    setWriting({ numbers: 'space-comma', dates: 'named' });
    expect(() =>
      writtenIn(plainWriting, () => {
        throw new Error('no');
      }),
    ).toThrow('no');
    expect(writingInForce()).toEqual({ numbers: 'space-comma', dates: 'named' });
  });
});

describe('sentences of the analysis', () => {
  const german = { numbers: 'point-comma', dates: 'points' } as const;

  test('numbers with units, chances and days are written anew', () => {
    const said = (sentence: string) => written(german, () => rewritten(sentence));
    expect(said('stock falls short on 2027-08-01 at 99.5 %; lead time 6.5 weeks')).toBe(
      'stock falls short on 01.08.2027 at 99,5\u00a0%; lead time 6,5 weeks',
    );
    expect(said('all 7 readings of the group are at 20,000 h')).toBe(
      'all 7 readings of the group are at 20.000 h',
    );
    expect(said('lies 0.12 mm above the line, 4.1 standard deviations (p = 0.0031)')).toBe(
      'lies 0,12 mm above the line, 4,1 standard deviations (p = 0,0031)',
    );
    expect(said('the term is -0.015 mm with a standard error of 0.02 (p = 0.45)')).toBe(
      'the term is \u22120,015 mm with a standard error of 0,02 (p = 0,45)',
    );
    expect(said('probability-plot correlation 0.987 (p below 0.0001)')).toBe(
      'probability-plot correlation 0,987 (p below 0,0001)',
    );
  });

  test('names stay as they are', () => {
    for (const name of [
      'part 12.345',
      'H-2005 h',
      'R-1.5 mm',
      'unit A-2027-08-01',
      'O-3005, run 2',
      'drawing 1.25 rev 3',
    ])
      expect(
        written(german, () => rewritten(`${name} has no limit`)),
        name,
      ).toBe(`${name} has no limit`);
  });

  test('in the plain style only the spaces change', () => {
    const sentence = 'at 20,000 h, 0.12 mm, 95 %, 2027-08-01';
    expect(rewritten(sentence)).toBe('at 20\u202f000 h, 0.12 mm, 95\u00a0%, 2027-08-01');
  });
});
