import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateOrder } from '../../../../lib/records/intake/values/dateOrder';
import { decimalSign } from '../../../../lib/records/intake/values/decimalSign';
import { isFormula } from '../../../../lib/records/intake/values/formulaText';
import { lengthUnitOfCell } from '../../../../lib/records/intake/values/lengthUnitOfCell';
import { noneWord } from '../../../../lib/records/intake/values/noneWord';
import { readDate } from '../../../../lib/records/intake/values/readDate';
import { readHours } from '../../../../lib/records/intake/values/readHours';
import { readLength } from '../../../../lib/records/intake/values/readLength';

const orders = ['year first', 'day first', 'month first'] as const;
const signs = ['point', 'comma'] as const;

function expectWhole(reading: object) {
  for (const [name, value] of Object.entries(reading)) {
    if (typeof value === 'number') expect(Number.isFinite(value) && !Object.is(value, -0)).toBe(true);
    if (typeof value === 'string') expect(value).not.toBe('');
    if (['reason', 'note'].includes(name)) expect(String(value ?? '')).not.toMatch(/NaN|Infinity|undefined/);
    if (name === 'iso') expect(value).toMatch(/^(19|20|21)\d\d-\d\d-\d\d$/);
  }
}

function readEveryWay(text: string) {
  for (const sign of signs) {
    const length = readLength(text, sign);
    const hours = readHours(text, sign);
    expectWhole(length);
    expectWhole(hours);
    if (length.kind === 'interval') expect(length.lower >= 0 && length.lower < length.upper).toBe(true);
    if (hours.kind === 'number') expect(hours.value).toBeGreaterThanOrEqual(0);
    if (text.trim() !== '' && length.kind === 'none' && length.word === null)
      expect(text).toMatch(/^[\s\u200B-\u200D\u2060\uFEFF]*$/);
  }
  for (const order of orders) expectWhole(readDate(text, order, '2026-11-25'));
  expect(['point', 'comma', 'open']).toContain(decimalSign([text]).sign);
  expect(['point', 'comma']).toContain(decimalSign([text], { expectsThousands: true }).sign);
  expect([...orders, 'open']).toContain(dateOrder([text]).order);
  expect([true, false]).toContain(isFormula(text));
  expect(['unit', 'held', undefined]).toContain(lengthUnitOfCell(text)?.kind);
  expect(noneWord(text)).not.toBe('');
}

describe('every parser answers every text', () => {
  it('of any code units, lone surrogates too', () => {
    const units = fc.array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 20 });
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      units.map((codes) => String.fromCharCode(...codes)),
    );
    fc.assert(fc.property(text, readEveryWay), { numRuns: 600, seed: 20260103 });
  });

  it('made of the pieces that cells are made of', () => {
    const numerals =
      '0|1|31|2019|45306|000|08:15|E9|e999|E-999|1/100|.|,|-|\u2212|+|(|)|<|>|*|?|~|/|:|[|]|=|@|#|"';
    const words =
      "'|e|d|T|h|mm|cm|thou|Std|n/a|goes|does not go|geht|to|bis|ca.|Mar|мая|\u00B1|\u2026| |\u202F|\n";
    const pieces = [...numerals.split('|'), ...words.split('|'), '999'.repeat(50)];
    const number = fc.constantFrom('0', '0.5', ',5', '7', '999', '12');
    const joint = fc.constantFrom('-', ' to ', '...', 'e', 'e-', ' / ', '<', ' goes ', ':', ' ');
    const text = fc
      .oneof(fc.array(fc.constantFrom(...pieces), { maxLength: 9 }), fc.tuple(number, joint, number))
      .map((parts) => parts.join(''));
    fc.assert(fc.property(text, readEveryWay), { numRuns: 3000, seed: 20260104 });
  });

  it.each([
    ' ',
    '1',
    '1 ',
    '(',
    '.',
    ',',
    '-',
    '*',
    '1,',
    '+1',
    "'",
    'x',
    'a. ',
    '1 mm ',
    '\u00A0*',
    'T1:',
    'Mar ',
  ])('of 100,000 times %j, in time that grows with the length only', (piece) => {
    const before = performance.now();
    readEveryWay(`=${piece.repeat(100_000)}`);
    readEveryWay(piece.repeat(100_000));
    readEveryWay(`+${piece.repeat(100_000)}a`);
    readEveryWay(`1${piece.repeat(100_000)}x`);
    expect(performance.now() - before).toBeLessThan(10_000);
  });
});
