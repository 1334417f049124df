import { csvFormatRows } from 'd3-dsv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normaliseCsv } from '../../lib/records/csv/normaliseCsv';

const encode = (text: string) => new TextEncoder().encode(text);

function cellsOf(body: Uint8Array): string[][] {
  const text = new TextDecoder().decode(body);
  return text === ''
    ? []
    : text
        .slice(0, -1)
        .split('\n')
        .map((line) => line.split('\u001f').map((cell) => cell.replaceAll('\u001e', '\n')));
}

describe('normaliseCsv', () => {
  it('gives every cell and its line back, whatever is quoted in it', () => {
    const cell = fc.string({
      unit: fc.constantFrom('a', '1', '"', ',', '\n', ' ', 'é', ';', '.'),
      maxLength: 8,
    });
    const table = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(table, fc.constantFrom('\n', '\r\n'), (rows, lineEnd) => {
        const records = rows.map((row) => csvFormatRows([row]));
        const lines: number[] = [];
        let line = 2;
        for (const record of records) {
          lines.push(line);
          line += record.split('\n').length;
        }
        const csv = normaliseCsv(encode(`a,b,c${lineEnd}${records.join(lineEnd)}${lineEnd}`), ',');
        const filled = rows
          .map((row, index) => [String(lines[index]), ...row])
          .filter((row) => row.slice(1).some((text) => text.trim() !== ''));
        expect(cellsOf(csv.body)).toEqual(filled);
        expect(csv.held).toEqual([]);
        expect(csv.rowsIn).toBe(filled.length);
      }),
      { numRuns: 500 },
    );
  });

  it('loses no line of any text: rows in = records + held', () => {
    const text = fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', '\r', '1', ' '), maxLength: 80 });
    fc.assert(
      fc.property(text, (body) => {
        const csv = normaliseCsv(encode(`h1,h2\n${body}`), ',');
        expect(csv.records + csv.held.length).toBe(csv.rowsIn);
        expect(cellsOf(csv.body).every((row) => row.length === 3)).toBe(true);
        const lettersIn = body.replaceAll(/[^a1]/g, '').length;
        const kept = cellsOf(csv.body)
          .flatMap((row) => row.slice(1))
          .join('')
          .replaceAll(/[^a1]/g, '').length;
        const held = csv.held
          .map((line) => line.raw)
          .join('')
          .replaceAll(/[^a1]/g, '').length;
        expect(kept + held).toBe(lettersIn);
      }),
      { numRuns: 1000 },
    );
  });

  it('holds a line with more cells than the header, with line and text', () => {
    const csv = normaliseCsv(encode('unit,value\nL-1,0,31\nL-2,0.30\n'), ',');
    expect(csv.held).toEqual([
      {
        row: 2,
        raw: 'L-1 | 0 | 31',
        reason:
          'the line has 3 cells where the header has 2: put cells that contain the delimiter in quotation marks',
        filled: [0, 1, 2],
      },
    ]);
    expect(cellsOf(csv.body)).toEqual([['3', 'L-2', '0.30']]);
  });

  it('an unclosed quotation mark costs its own line only', () => {
    const csv = normaliseCsv(encode('unit,remarks\nL-1,"rubbed\nL-2,fine\nL-3,fine\n'), ',');
    expect(csv.held.map((line) => line.row)).toEqual([2]);
    expect(cellsOf(csv.body).map((row) => row[1])).toEqual(['L-2', 'L-3']);
  });

  it('takes short lines, surplus empty cells, blank lines, mixed line ends and a byte order mark', () => {
    const csv = normaliseCsv(encode('\ufeffa,b\r\n1\r\n\r\n , \n2,3,,\r4,5'), ',');
    expect(csv.header).toEqual(['a', 'b']);
    expect(cellsOf(csv.body)).toEqual([
      ['2', '1', ''],
      ['5', '2', '3'],
      ['6', '4', '5'],
    ]);
    expect(csv.held).toEqual([]);
  });

  it('holds a line of over 256 KiB with the start of its text', () => {
    const csv = normaliseCsv(encode(`a,b\n${'x'.repeat(300_000)},1\n1,2\n`), ',');
    expect(csv.held.map((line) => line.row)).toEqual([2]);
    expect(csv.held[0]?.raw.startsWith('xxx')).toBe(true);
    expect(cellsOf(csv.body)).toEqual([['3', '1', '2']]);
  });

  it('takes time in proportion to the file, even with a stray quotation mark in every line', () => {
    const time = (lines: number) => {
      const bytes = encode(`a,b\n${'"x,1\n'.repeat(lines)}`);
      const start = performance.now();
      normaliseCsv(bytes, ',');
      return performance.now() - start;
    };
    // Other work on the machine may lengthen a single run: the shortest of three counts.
    const shortest = (lines: number) => Math.min(time(lines), time(lines), time(lines));
    time(2_000);
    // In proportion it is 16, in proportion to the square 256. Few lines would be over before the code runs at its usual pace.
    const ratio = shortest(640_000) / Math.max(1, shortest(40_000));
    expect(ratio).toBeLessThan(64);
  });
});
