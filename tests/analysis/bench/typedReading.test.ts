import { describe, expect, it } from 'vitest';
import { digitsExchanged, scaleSuggestion } from '../../../lib/analysis/bench/suggestions';
import { typedHours, typedReading } from '../../../lib/analysis/bench/typedReading';
import type { LengthUnit } from '../../../lib/records/lengthUnits';

const read = (text: string, uom: LengthUnit = 'mm') => {
  const typed = typedReading(text, uom);
  if (typed.kind !== 'read') throw new Error(`${text} was not read`);
  return typed.reading;
};

describe('what is typed into a box', () => {
  it.each([
    ['0.31', 'mm', 0.31, 0.31],
    ['0,31', 'mm', 0.31, 0.31],
    [' .31 ', 'mm', 0.31, 0.31],
    ['31', '0.01mm', 0.31, 0.31],
    ['310', 'um', 0.31, 0.31],
    ['12,2', 'mil', 0.30988, 0.30988],
    ['0.0122', 'in', 0.30988, 0.30988],
    ['12.2 mil', 'mm', 0.30988, 0.30988],
    ['20 µm', 'mm', 0.02, 0.02],
    ['0.40-0.45', 'mm', 0.4, 0.45],
    ['0,40-0,45', 'mm', 0.4, 0.45],
    ['<0.05', 'mm', 0, 0.05],
    ['>0.40', 'mm', 0.4, null],
    ['≥ 0,40', 'mm', 0.4, null],
    ['1,234', 'mm', 1.234, 1.234],
    ['-0.2', 'mm', -0.2, -0.2],
  ] as const)('%s in %s is %d mm to %s mm', (text, uom, lower, upper) => {
    const { lower_mm, upper_mm } = read(text, uom);
    expect(lower_mm).toBeCloseTo(lower, 12);
    if (upper === null) expect(upper_mm).toBeNull();
    else expect(upper_mm).toBeCloseTo(upper, 12);
  });

  it.each(['x7', '0.4/0.5', '2 cm', '=1+1', '>0.4-0.5', '0.45-0.40', '1.2.3'])(
    '%s is no reading, and the reason is said',
    (text) => {
      const typed = typedReading(text, 'mm');
      expect(typed.kind).toBe('unreadable');
      expect(typed.kind === 'unreadable' ? typed.reason : '').not.toBe('');
    },
  );

  it('nothing typed, or words for nothing, is no reading', () => {
    for (const text of ['', '  ', 'n/a', '-']) expect(typedReading(text, 'mm').kind).toBe('none');
  });

  it.each([
    ['96949', 96_949],
    ['96 949', 96_949],
    ['96,949', 96_949],
    ['96.949', 96_949],
    ['96949.5', 96_949.5],
    ['96949,5 h', 96_949.5],
    ['1.234.567', 1_234_567],
  ])('%s are hours', (text, hours) => {
    expect(typedHours(text)).toEqual({ hours, reason: null });
  });

  it('hours that are none say why', () => {
    expect(typedHours('5:30').hours).toBeNull();
    expect(typedHours('5:30').reason).toMatch(/time of day/);
    expect(typedHours('5:30').reason).not.toBeNull();
    expect(typedHours('')).toEqual({ hours: null, reason: null });
  });
});

describe('what might have been meant', () => {
  const off = (target_mm: number, within_mm: number) => (value_mm: number) =>
    Math.abs(value_mm - target_mm) / within_mm;

  it('a slip of scale is said in the unit that was typed, and kept to it', () => {
    const at = (text: string, uom: LengthUnit, target_mm: number) => {
      const reading = read(text, uom);
      return scaleSuggestion(reading, (factor) => off(target_mm, 0.02)(reading.lower_mm * factor));
    };
    expect(at('3.1', 'mm', 0.31)).toEqual({ words: 'a tenth', suggestion: '0.31' });
    expect(at('12.2', 'mm', 0.31)?.suggestion).toBe('0.3099');
    expect(at('0.31', 'um', 0.31)).toEqual({ words: 'times 1000', suggestion: '310' });
    expect(at('3.1 mm', 'um', 0.31)?.suggestion).toBe('0.31 mm');
    expect(at('0.9', 'mm', 0.31)).toBeNull();
  });

  it('two neighbouring digits are exchanged, over the decimal sign too', () => {
    expect(digitsExchanged('0.54', off(0.45, 0.02))).toBe('0.45');
    expect(digitsExchanged('0,295', off(0.259, 0.002))).toBe('0,259');
    expect(digitsExchanged('1.02', off(0.12, 0.02))).toBe('0.12');
    expect(digitsExchanged('0.33', off(0.45, 0.02))).toBeNull();
    expect(digitsExchanged('0.54 mm', off(0.45, 0.02))).toBeNull();
  });
});
