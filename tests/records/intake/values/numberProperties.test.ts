import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalSign } from '../../../../lib/records/intake/values/decimalSign';
import { lengthUnitOfCell } from '../../../../lib/records/intake/values/lengthUnitOfCell';
import { numberText } from '../../../../lib/records/intake/values/numberText';
import { readHours } from '../../../../lib/records/intake/values/readHours';
import { readLength } from '../../../../lib/records/intake/values/readLength';
import { anySign, isNear, writtenNumber } from './writtenNumber';

const runs = { numRuns: 3000, seed: 20260101 };

const units = [
  ['mm', 'mm'],
  [' мм', 'mm'],
  ['\u00B5m', 'um'],
  [' my', 'um'],
  [' thou', 'mil'],
  [' mil', 'mil'],
  [' in', 'in'],
  ['"', 'in'],
  [' 1/100', '0.01mm'],
  [' 1/100 mm', '0.01mm'],
  [' Hundertstel', '0.01mm'],
] as const;

describe('numbers in every writing', () => {
  it('come back equal as lengths', () => {
    fc.assert(
      fc.property(anySign.chain(writtenNumberOf), ({ text, sign, value }) => {
        const reading = readLength(text, sign);
        expect(reading.kind).toBe('number');
        expect(reading.kind === 'number' && isNear(reading.value, value)).toBe(true);
      }),
      runs,
    );
  });

  it('come back equal with a unit of measure, which is told', () => {
    fc.assert(
      fc.property(
        anySign.chain(writtenNumberOf),
        fc.constantFrom(...units),
        ({ text, sign, value }, [unit, uom]) => {
          const cell = lengthUnitOfCell(`${text}${unit} `);
          expect(cell).toMatchObject({ kind: 'unit', uom });
          const reading = readLength(cell?.kind === 'unit' ? cell.text : '', sign);
          expect(reading.kind === 'number' && isNear(reading.value, value)).toBe(true);
        },
      ),
      runs,
    );
  });

  it('come back equal as hours, or held if negative', () => {
    const suffix = fc.constantFrom('', 'h', ' H', ' hrs', ' Std', ' Std.', ' ч', ' heures', ' timer');
    fc.assert(
      fc.property(anySign.chain(writtenNumberOf), suffix, ({ text, sign, value }, ending) => {
        const reading = readHours(`${text}${ending}`, sign);
        if (value < 0) expect(reading.kind).toBe('held');
        else expect(reading.kind === 'number' && isNear(reading.value, value)).toBe(true);
      }),
      runs,
    );
  });

  it('are never taken with a separator out of place: whatever is read has groups of three, one kind, one decimal sign', () => {
    const text = fc.string({ unit: fc.constantFrom(...'0123456789012345.,.,', ' ', "'"), maxLength: 12 });
    let numbers = 0;
    fc.assert(
      fc.property(text, anySign, (written, sign) => {
        const reading = readLength(written, sign);
        if (reading.kind !== 'number') return;
        numbers += 1;
        const bare = written.trim().replace(/^'/, '').trim();
        const [whole = '', fraction = '', ...more] = bare.split(sign === 'point' ? '.' : ',');
        expect(more).toEqual([]);
        expect([...fraction].every((character) => character >= '0' && character <= '9')).toBe(true);
        const separators = [...whole].filter((character) => character < '0' || character > '9');
        expect(new Set(separators).size).toBeLessThanOrEqual(1);
        const [first = '', ...groups] = whole.split(separators[0] ?? '\n');
        expect(groups.every((group) => group.length === 3)).toBe(true);
        if (groups.length > 0) expect(first.length >= 1 && first.length <= 3 && first[0] !== '0').toBe(true);
        const digits = first + groups.join('');
        const scaled = Number(digits + fraction) / 10 ** fraction.length;
        expect(isNear(reading.value, scaled)).toBe(true);
      }),
      { ...runs, numRuns: 6000 },
    );
    expect(numbers).toBeGreaterThan(500);
  });

  it('two ends written as a range come back as that interval, or held', () => {
    const joint = fc.constantFrom(
      '-',
      ' - ',
      '\u2013',
      ' \u2026 ',
      '...',
      ' to ',
      ' bis ',
      ' \u00E0 ',
      ' a ',
      ' til ',
      ' до ',
    );
    const ends = anySign.chain((sign) => {
      const end = writtenNumber(sign, { signs: [''] }).map((number) => ({
        ...number,
        text: number.text.replaceAll(/[*?\uFEFF]/g, ''),
      }));
      return fc.tuple(end, end);
    });
    let intervals = 0;
    fc.assert(
      fc.property(ends, joint, ([a, b], between) => {
        const reading = readLength(`${a.text}${between}${b.text}`, a.sign);
        expect(['interval', 'held']).toContain(reading.kind);
        if (a.value >= b.value) expect(reading.kind).toBe('held');
        if (reading.kind !== 'interval') return;
        intervals += 1;
        expect(isNear(reading.lower, a.value) && isNear(reading.upper, b.value)).toBe(true);
      }),
      runs,
    );
    expect(intervals).toBeGreaterThan(1000);
  });
});

function writtenNumberOf(sign: 'point' | 'comma') {
  return writtenNumber(sign);
}

describe('decimalSign of a column in one writing', () => {
  const column = (maxDecimals: number) =>
    anySign.chain((sign) => fc.array(writtenNumber(sign, { maxDecimals }), { minLength: 1, maxLength: 6 }));

  it('is that sign, or open, or makes no difference to any length', () => {
    fc.assert(
      fc.property(column(4), (numbers) => {
        const { sign } = decimalSign(numbers.map(({ text }) => text));
        if (sign === 'open') return;
        for (const { text, value } of numbers) {
          const reading = readLength(text, sign);
          expect(reading.kind === 'number' && isNear(reading.value, value)).toBe(true);
        }
      }),
      runs,
    );
  });

  it('is that sign, or open, or makes no difference to any hours of up to two decimals', () => {
    fc.assert(
      fc.property(column(2), (numbers) => {
        const { sign } = decimalSign(
          numbers.map(({ text }) => `${text} h`),
          { expectsThousands: true },
        );
        expect(sign).not.toBe('open');
        for (const { text, value } of numbers) {
          const reading = readHours(text, sign === 'open' ? 'point' : sign);
          if (value >= 0) expect(reading.kind === 'number' && isNear(reading.value, value)).toBe(true);
        }
      }),
      runs,
    );
  });

  it('is open for a column that holds both signs', () => {
    const decimals = (sign: 'point' | 'comma') =>
      writtenNumber(sign).filter(
        ({ text }) =>
          /[.,]\d{1,2}\D*$/.test(text) &&
          text.includes(sign === 'point' ? '.' : ',') &&
          !/[.,]\d{3}/.test(text),
      );
    fc.assert(
      fc.property(decimals('point'), decimals('comma'), (a, b) => {
        expect(decimalSign([a.text, b.text]).sign).toBe('open');
        expect(decimalSign([b.text, a.text], { expectsThousands: true }).sign).toBe('open');
      }),
      runs,
    );
  });
});

describe('numberText', () => {
  it('reads back as the same double, by the language and by readLength, without exponent', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = numberText(value);
        expect(text).toMatch(/^-?\d+(\.\d+)?$/);
        expect(Number(text)).toBe(value === 0 ? 0 : value);
        const reading = readLength(text, 'point');
        if (text.length <= 120)
          expect(reading).toEqual({ kind: 'number', value: value === 0 ? 0 : value, note: null });
        else expect(reading.kind).toBe('held');
      }),
      runs,
    );
  });
});
