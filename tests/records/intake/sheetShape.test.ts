import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recogniseLayout } from '../../../lib/records/intake/recogniseLayout';
import { fnv1a64, sheetShape } from '../../../lib/records/intake/sheetShape';

describe('fnv1a64', () => {
  // Test vectors of the FNV reference code (test_fnv.c, 64-bit FNV-1a).
  test.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['b', 'af63df4c8601f1a5'],
    ['foobar', '85944171f73967e8'],
  ])('of ‘%s’', (text, hash) => {
    expect(fnv1a64(text)).toBe(hash);
  });
});

const name = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 8 }).filter((text) => text.trim() !== '');
const names = fc.array(name, { minLength: 2, maxLength: 8 });
const plain = (text: string) => text.normalize('NFC').replace(/\s+/g, ' ').trim().toLowerCase();

describe('sheetShape', () => {
  test('is the same whatever the capitals, spaces and delimiters at the end', () => {
    fc.assert(
      fc.property(names, fc.nat(3), (columns, ends) => {
        const written = columns.map((column) => `  ${column.normalize('NFD')}\t`);
        expect(sheetShape([...written, ...Array<string>(ends).fill('')])).toBe(sheetShape(columns));
      }),
    );
  });

  test('differs where a name or the order differs', () => {
    fc.assert(
      fc.property(names, names, (first, second) => {
        const same = JSON.stringify(first.map(plain)) === JSON.stringify(second.map(plain));
        expect(sheetShape(first) === sheetShape(second)).toBe(same);
        expect(sheetShape([...first].reverse()) === sheetShape(first)).toBe(
          JSON.stringify(first.map(plain)) === JSON.stringify([...first].reverse().map(plain)),
        );
      }),
    );
  });

  test('tells names apart from their joining', () => {
    expect(sheetShape(['a b', 'c'])).not.toBe(sheetShape(['a', 'b c']));
    expect(sheetShape(['a', '', 'b'])).not.toBe(sheetShape(['a', 'b']));
  });

  test('is one for a sheet in any delimiter', () => {
    const rows = [
      'turbo|date|hours|axial play found [mm]',
      'P-1|2016-02-03|8120|0.31',
      'P-2|2016-03-04|8300|0.29',
    ];
    const shapes = [',', ';', '\t', '|'].map((delimiter) => {
      const text = rows.map((row) => row.replaceAll('|', delimiter)).join('\r\n');
      const layout = recogniseLayout(new TextEncoder().encode(text));
      return 'reason' in layout ? layout.reason : sheetShape(layout.columns);
    });
    expect(new Set(shapes).size).toBe(1);
    expect(shapes[0]).toMatch(/^4 columns, [0-9a-f]{16}$/);
  });
});
