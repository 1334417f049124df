import { describe, expect, it } from 'vitest';
import { lengthUnitOfCell } from '../../../../lib/records/intake/values/lengthUnitOfCell';
import { numberText } from '../../../../lib/records/intake/values/numberText';
import type { SettledSign } from '../../../../lib/records/intake/values/numeral';
import { readHours } from '../../../../lib/records/intake/values/readHours';

const hours: readonly (readonly [string, SettledSign, number, string | null])[] = [
  ['14200', 'point', 14200, null],
  ['0', 'point', 0, null],
  ['14,200', 'point', 14200, 'thousands comma taken out'],
  ['27100H', 'point', 27100, "'H' taken off"],
  ['27 100 h', 'point', 27100, "'h' taken off; thousands space taken out"],
  ['27\u00A0100', 'comma', 27100, 'thousands space taken out'],
  ['12.480', 'comma', 12480, 'thousands point taken out'],
  ['12.480,5 Std.', 'comma', 12480.5, "'Std.' taken off; thousands point taken out"],
  ["12'480 Std", 'point', 12480, "'Std' taken off; thousands apostrophe taken out"],
  ['12480.5 hrs', 'point', 12480.5, "'hrs' taken off"],
  ['12 480 ч', 'comma', 12480, "'ч' taken off; thousands space taken out"],
  ['12480 ч.', 'comma', 12480, "'ч.' taken off"],
  ['12480 heures', 'comma', 12480, "'heures' taken off"],
  ['12480 horas', 'comma', 12480, "'horas' taken off"],
  ['12480 timer', 'comma', 12480, "'timer' taken off"],
  ['12480 run hours', 'point', 12480, "'run hours' taken off"],
  ['12480?', 'point', 12480, "'?' taken off: marked doubtful"],
  ['27100H*', 'point', 27100, "'H' taken off; '*' taken off: a mark that may refer to a remark"],
];

const heldHours: readonly (readonly [string, SettledSign, string])[] = [
  ['-5', 'point', 'negative'],
  ['(14200)', 'point', 'negative'],
  ['\u2212200 h', 'point', 'negative'],
  ['14,20', 'point', 'groups of three'],
  ['14.2k', 'point', "'k'"],
  ['14 k', 'point', "'k'"],
  ['1.42E+04', 'point', 'exponent'],
  ['14200:30', 'point', 'minutes'],
  ['14200h30', 'point', 'minutes'],
  ['14000-15000', 'point', 'one number'],
  ['<15000', 'point', 'one number'],
  ['14200 EOH', 'point', 'words'],
  ['520 days', 'point', 'words'],
  ['14200 / 14300', 'point', 'several'],
  ['=B2+B3', 'point', 'formula'],
  ['h', 'point', 'no number'],
  ['9'.repeat(121), 'point', 'too long'],
];

describe('readHours', () => {
  it.each(hours)('reads %j (decimal %s) as %d h', (text, sign, value, note) => {
    expect(readHours(text, sign)).toEqual({ kind: 'number', value, note });
  });

  it.each(heldHours)('holds %j (decimal %s)', (text, sign, reason) => {
    expect(readHours(text, sign)).toEqual({ kind: 'held', reason: expect.stringContaining(reason) });
  });

  it.each(['', '-', 'n/a', 'nicht gemessen'])('takes %j as none', (text) => {
    expect(readHours(text, 'point')).toEqual({ kind: 'none', word: text === '' ? null : text });
  });
});

describe('lengthUnitOfCell', () => {
  it.each([
    ['21 1/100', '21', '0.01mm'],
    ['21 1/100 mm', '21', '0.01mm'],
    ['21 x 0.01 mm', '21', '0.01mm'],
    ['21 \u00D7 0,01mm', '21', '0.01mm'],
    ['21 Hundertstel', '21', '0.01mm'],
    ['21 centi\u00E8mes', '21', '0.01mm'],
    ['21 соток', '21', '0.01mm'],
    ['8.5 thou', '8.5', 'mil'],
    ['8.5 mils', '8.5', 'mil'],
    ['8.5 1/1000 in', '8.5', 'mil'],
    ['20 \u00B5m', '20', 'um'],
    ['20 \u03BCm', '20', 'um'],
    ['20um', '20', 'um'],
    ['20 my', '20', 'um'],
    ['20 мкм', '20', 'um'],
    ['20 1/1000 mm', '20', 'um'],
    ['0.2 mm', '0.2', 'mm'],
    ['0,2mm', '0,2', 'mm'],
    ['0.2 MM.', '0.2', 'mm'],
    ['0.01 mm', '0.01', 'mm'],
    ['0,2 мм', '0,2', 'mm'],
    ['0.2 [mm]', '0.2', 'mm'],
    ['(0.02 mm)', '(0.02 )', 'mm'],
    ['0.52 mm*', '0.52 *', 'mm'],
    ['<0.02 mm', '<0.02', 'mm'],
    ['0.45-0.50 mm', '0.45-0.50', 'mm'],
    ['0.45 mm - 0.50 mm', '0.45 - 0.50', 'mm'],
    ['0.01"', '0.01', 'in'],
    ['0.01 in', '0.01', 'in'],
    ['0.01 Zoll', '0.01', 'in'],
  ])('takes the unit out of %j', (text, rest, uom) => {
    expect(lengthUnitOfCell(text)).toEqual({ kind: 'unit', text: rest, uom });
  });

  it.each([
    '2 cm',
    '2 m',
    "2'",
    '2 1/10',
    '2 1/10 mm',
    '2 ft',
    '2 см',
    '5 %',
    '2 1/8"',
    '21 1/1000',
    '0.2 mm / 8 thou',
  ])('holds %j', (text) => {
    expect(lengthUnitOfCell(text)?.kind).toBe('held');
  });

  it.each([
    '0.2',
    '',
    'OK',
    'mm',
    '0.45 to 0.50',
    '0.2 mm\u00B2',
    '0.2 mm3',
    '0.2 mm/s',
    "1'234",
    '0.52*',
    '211/100',
  ])('finds none in %j', (text) => {
    expect(lengthUnitOfCell(text)).toBeNull();
  });
});

describe('numberText', () => {
  it.each([
    [0.31, '0.31'],
    [-0, '0'],
    [1234.5, '1234.5'],
    [1e-7, '0.0000001'],
    [-1.25e-9, '-0.00000000125'],
    [1e21, '1000000000000000000000'],
    [1.5e22, '15000000000000000000000'],
    [0.1 + 0.2, '0.30000000000000004'],
  ])('writes %d as %s', (value, text) => {
    expect(numberText(value)).toBe(text);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %d', (value) => {
    expect(() => numberText(value)).toThrow(`numberText requires a finite number, got ${value}`);
  });
});
