import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type CsvPiece, type CutCsv, cutCsv } from '../../lib/records/csv/cutCsv';
import { normaliseCsv } from '../../lib/records/csv/normaliseCsv';

const encode = (text: string) => new TextEncoder().encode(text);

/** Rows of a piece as a reader without any quoting sees them, the line in front. */
function rowsOf({ bytes, delimiter, lineEnd, firstLine }: CsvPiece): string[] {
  const lines = new TextDecoder().decode(bytes).split(lineEnd).slice(0, -1);
  return lines.map((line, index) => {
    const cells = line.split(delimiter);
    return JSON.stringify(firstLine === null ? cells : [String(firstLine + index), ...cells]);
  });
}

async function cut(text: string): Promise<CutCsv> {
  return cutCsv(encode(text), ',', async () => {});
}

function normalisedRows(text: string): string[] {
  const body = new TextDecoder().decode(normaliseCsv(encode(text), ',').body);
  return body
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.stringify(line.split('\u001f')));
}

it('gives the rows, lines and held lines that cutting every byte gives, whatever the text', async () => {
  const cell = fc.string({ unit: fc.constantFrom('a', '1', 'é', '.'), minLength: 1, maxLength: 4 });
  const plain = fc.array(
    fc.tuple(cell, cell).map((cells) => cells.join(',')),
    { maxLength: 6 },
  );
  const odd = fc.string({ unit: fc.constantFrom('a', '"', ',', ' ', '\r', '\u001f'), maxLength: 6 });
  const lines = fc
    .tuple(plain, fc.option(odd), plain)
    .map(([before, one, after]) => (one === null ? [...before, ...after] : [...before, one, ...after]));
  let plainOnes = 0;
  await fc.assert(
    fc.asyncProperty(lines, fc.constantFrom('\n', '\r\n'), async (given, lineEnd) => {
      const text = `h1,h2\n${given.map((line) => `${line}${lineEnd}`).join('')}`;
      const csv = await cut(text);
      if (csv.pieces.some(({ firstLine }) => firstLine !== null)) plainOnes++;
      const { held, rowsIn, records } = normaliseCsv(encode(text), ',');
      expect(csv.pieces.flatMap(rowsOf)).toEqual(normalisedRows(text));
      expect({ held: csv.held, rowsIn: csv.rowsIn, records: csv.records }).toEqual({ held, rowsIn, records });
    }),
    { numRuns: 1000, examples: [[['\r a,'], '\n']] },
  );
  // Both ways must have been taken for the comparison to say anything.
  expect(plainOnes).toBeGreaterThan(100);
});

it('a file of several pieces, plain and quoted, keeps every row and its line', async () => {
  const row = (n: number) => (n >= 300_000 && n < 301_000 ? `U-${n},"0,${n}"` : `U-${n},0.${n}`);
  const text = `unit,value\n${Array.from({ length: 700_000 }, (_, n) => `${row(n)}\n`).join('')}`;
  const csv = await cut(text);
  expect(csv.pieces.some(({ firstLine }) => firstLine === null)).toBe(true);
  expect(csv.pieces.filter(({ firstLine }) => firstLine !== null).length).toBeGreaterThan(1);
  const rows = csv.pieces.flatMap(rowsOf);
  expect(rows).toHaveLength(700_000);
  for (const n of [0, 1, 299_999, 300_000, 300_999, 301_000, 699_999])
    expect(rows[n]).toBe(
      JSON.stringify([String(n + 2), `U-${n}`, row(n).replaceAll('"', '').replace(`U-${n},`, '')]),
    );
});

it('lists every line of a large piece that cannot be cut', async () => {
  const lines = 300_000;
  const { held, records, rowsIn } = await cut(`a,b\n${'1,2,3\n'.repeat(lines)}`);
  expect([held.length, records, rowsIn]).toEqual([lines, 0, lines]);
  expect(held.at(-1)?.row).toBe(lines + 1);
});
