import { csvParseRows } from 'd3-dsv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CellValue, DataColumn } from '../../../app/table/DataColumn';
import { savedTable } from '../../../app/table/savedTable';
import { formatMm } from '../../../lib/charts/format';
import { plainWriting, setWriting } from '../../../lib/charts/writingStyle';
import { pastedTable } from '../../../lib/records/csv/pastedTable';
import { fromSpreadsheet } from '../../../lib/records/csv/spreadsheetText';
import { writeCsv } from '../../../lib/records/csv/writeCsv';

type Row = readonly CellValue[];

const columnsOf = (count: number): readonly DataColumn<Row>[] =>
  Array.from({ length: count }, (_, index) => ({
    id: String(index),
    header: `column ${index}`,
    value: (row) => row[index] ?? null,
  }));

const cell = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.constantFrom('=1+1', "'=1", '+49 1', '-', '@x', '\t=2', 'a\tb\r\nc', '"', ';', '2026-03-01', ''),
  fc.double(),
  fc.integer(),
  fc.constant(null),
);
const tables = fc
  .integer({ min: 1, max: 5 })
  .chain((count) =>
    fc.tuple(fc.constant(count), fc.array(fc.array(cell, { minLength: count, maxLength: count }))),
  );

describe('CSV of a table', () => {
  test('reads back as the same cells, in the same order', () => {
    fc.assert(
      fc.property(tables, ([count, rows]) => {
        const saved = savedTable(columnsOf(count), rows);
        const [head, ...lines] = csvParseRows(writeCsv(saved.header, saved.rows));
        expect(head).toEqual(saved.header);
        expect(lines).toHaveLength(rows.length);
        rows.forEach((row, line) => {
          row.forEach((value, index) => {
            const read = lines[line]?.[index] ?? 'nothing';
            if (typeof value === 'string') expect(fromSpreadsheet(read)).toBe(value);
            else if (value === null || !Number.isFinite(value)) expect(read).toBe('');
            else expect(Math.abs(Number(read) - value)).toBeLessThanOrEqual(1e-7 * Math.abs(value));
          });
        });
        expect(saved.rows.flat()).not.toContainEqual(Number.NaN);
      }),
    );
  });

  test('numbers keep eight digits, counts all of theirs', () => {
    expect(
      savedTable(columnsOf(3), [[0.123456789012, 1_234_567_890, Number.POSITIVE_INFINITY]]).rows,
    ).toEqual([[0.12345679, 1_234_567_890, null]]);
  });

  test('units stand in the head, several columns come of one, buttons of none', () => {
    const columns: readonly DataColumn<Row>[] = [
      { id: 'a', header: 'Hours now', unit: 'h', value: ([hours]) => hours ?? null },
      {
        id: 'b',
        header: 'Level ± SD',
        value: ([, level]) => level ?? null,
        saved: [
          { header: 'Level, mm', value: ([, level]) => level ?? null },
          { header: 'SD, mm', value: ([, , sd]) => sd ?? null },
        ],
      },
      { id: 'c', header: 'Do', value: () => null, saved: [] },
    ];
    expect(savedTable(columns, [[10, 0.3, 0.01]])).toEqual({
      header: ['Hours now, h', 'Level, mm', 'SD, mm'],
      rows: [[10, 0.3, 0.01]],
    });
  });

  test('sentences are written plainly whatever the reader chose', () => {
    setWriting({ numbers: 'point-comma', dates: 'points' });
    const columns: readonly DataColumn<Row>[] = [
      { id: 'a', header: 'Said', value: ([level]) => formatMm(Number(level)) },
    ];
    const { rows } = savedTable(columns, [[0.3]]);
    const onScreen = formatMm(0.3);
    setWriting(plainWriting);
    expect(rows).toEqual([['0.300\u00a0mm']]);
    expect(onScreen).toBe('0,300\u00a0mm');
  });
});

describe('a table on the clipboard', () => {
  test('has one line a row and a cell a column, and its numbers parse', () => {
    fc.assert(
      fc.property(tables, ([count, rows]) => {
        const saved = savedTable(columnsOf(count), rows);
        const { text, html } = pastedTable(saved.header, saved.rows, '.');
        const lines = text.split('\n').slice(0, -1);
        expect(lines).toHaveLength(rows.length + 1);
        saved.rows.forEach((row, line) => {
          const cells = lines[line + 1]?.split('\t') ?? [];
          expect(cells).toHaveLength(count);
          row.forEach((value, index) => {
            if (typeof value === 'number') expect(Number(cells[index]) === value).toBe(true);
          });
        });
        expect(html.match(/<tr>/g)).toHaveLength(rows.length + 1);
        expect(html.match(/<td>/g) ?? []).toHaveLength(count * rows.length);
      }),
    );
  });

  test('nothing in it computes, and HTML in it is text', () => {
    const { text, html } = pastedTable(['a'], [['=1+1'], ['<b>&"']], '.');
    expect(text).toBe('a\n\'=1+1\n<b>&"\n');
    expect(html).toBe(
      "<table><tr><th>a</th></tr><tr><td>'=1+1</td></tr><tr><td>&lt;b&gt;&amp;&quot;</td></tr></table>",
    );
  });

  test('with a decimal comma where the reader writes one; a number that is none is refused', () => {
    expect(pastedTable(['a'], [[0.25], [-1200]], ',').text).toBe('a\n0,25\n-1200\n');
    expect(() => pastedTable(['a'], [[Number.NaN]], '.')).toThrow('pastedTable requires finite numbers');
  });
});
