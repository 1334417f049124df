import { csvParseRows } from 'd3-dsv';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { FleetAnswers } from '../../lib/analysis/engine/FleetAnswers';
import type { ResultTable } from '../../lib/analysis/fleetTables';
import { canonicalRows, questionsTable } from '../../lib/analysis/intakeTables';
import { openAnalysis } from '../../lib/analysis/openAnalysis';
import { resultTables } from '../../lib/analysis/resultTables';
import { canonicalTables } from '../../lib/records/canonicalTables';
import { cutCsv } from '../../lib/records/csv/cutCsv';
import { normaliseBody } from '../../lib/records/csv/normaliseCsv';
import { fromSpreadsheet } from '../../lib/records/csv/spreadsheetText';
import { writeCsv } from '../../lib/records/csv/writeCsv';
import { heldRowsCsv } from '../../lib/records/decisions/heldRowsCsv';
import { readHeldRowsCsv } from '../../lib/records/decisions/readHeldRowsCsv';
import type { InputFile } from '../../lib/records/importReport';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';
import { hostileFleet } from '../support/hostileFleet';
import { formulas } from '../support/hostileTexts';
import { withRecords } from '../support/withRecords';

const encode = (text: string) => new TextEncoder().encode(text);
const given: readonly InputFile[] = hostileFleet('http://elsewhere.example').map(({ name, content }) => ({
  name,
  bytes: encode(String(content)),
}));

/** What spreadsheets compute, by the list of the OWASP page on CSV injection, unless all of the cell is a number. */
function isComputed(cell: string): boolean {
  return /^[=+\-@\t\r\n＝＋－＠]/.test(cell) && (cell.trim() === '' || Number.isNaN(Number(cell)));
}

function expectSafe(csv: string): void {
  expect(
    csvParseRows(csv.replace(/^\uFEFF/, ''))
      .flat()
      .filter(isComputed),
  ).toEqual([]);
}

const written = ({ header, rows }: ResultTable) => writeCsv(header, rows);

/** Cells as a CSV file with canonical names gives them. */
async function cellsOf(csv: string): Promise<readonly (readonly string[])[]> {
  const { pieces } = await cutCsv(encode(csv), ',', async () => {});
  return pieces.flatMap(({ bytes, delimiter, lineEnd, firstLine }) =>
    new TextDecoder()
      .decode(bytes)
      .split(lineEnd)
      .slice(0, -1)
      .map((line) => {
        const cells = line.split(delimiter).map((cell) => cell.replaceAll('\u001e', '\n'));
        return firstLine === null ? cells.slice(1) : cells;
      }),
  );
}

describe('a cell that a spreadsheet would compute', () => {
  const character = fc.constantFrom(
    "'",
    '=',
    '+',
    '-',
    '@',
    '\t',
    '＝',
    '＋',
    '－',
    '＠',
    '"',
    ',',
    'a',
    '1',
    'é',
  );
  const cell = fc.string({ unit: character, maxLength: 6 });

  it('is written as text and read back as it was, in files with canonical names', async () => {
    const row = fc.tuple(fc.constant('x'), cell, cell, cell);
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 5 }), async (rows) => {
        const csv = writeCsv(['a', 'b', 'c', 'd'], rows);
        expectSafe(csv);
        expect(await cellsOf(csv)).toEqual(rows);
      }),
      { numRuns: 1000 },
    );
  });

  it('keeps its apostrophe in a sheet in a workshop’s own form, which none of ours wrote', () => {
    const { body } = normaliseBody(encode("a;b\n'=1;'-2\n"), ';', 2, ['a', 'b']);
    expect(new TextDecoder().decode(body)).toBe("2\u001f'=1\u001f'-2\n");
  });

  it.each([
    ['=1+1', "'=1+1"],
    ['\r=1', '"\'\r=1"'],
    ["'=1", "''=1"],
    ['-0.5', '-0.5'],
    ['+1e3', '+1e3'],
    ["'s-Gravenhage", "'s-Gravenhage"],
    ['-', "'-"],
    ['-1-1', "'-1-1"],
  ])('%j is written as %j', (text, expected) => {
    expect(writeCsv(['a'], [[text]])).toBe(`a\n${expected}\n`);
  });
});

describe('hostile texts in every field', () => {
  let tables: readonly InputFile[];
  let first: ReadonlyMap<string, ResultTable['rows']>;

  beforeAll(async () => {
    const read = await records(given);
    first = new Map(read.map(({ name, rows }) => [name, rows]));
    tables = read.map((table) => ({ name: `${table.name}.csv`, bytes: encode(written(table)) }));
  });

  function records(files: readonly InputFile[]): Promise<readonly ResultTable[]> {
    return withRecords(files, async (connector) => {
      const read: ResultTable[] = [];
      for (const { name } of canonicalTables) read.push(await canonicalRows(connector, name));
      return read;
    });
  }

  it('come in as they are', () => {
    const remarks = new Set(first.get('overhauls')?.map((row) => row.at(-1)));
    for (const text of [
      '=1+1',
      '+1+cmd|calc',
      '@SUM(1+1)*cmd|calc',
      '<img src=x onerror=confirm(1)>',
      '__proto__',
    ])
      expect(remarks.has(text), text).toBe(true);
    // ‘'=1+1’ is how a file writes ‘=1+1’: two units of that name come in again.
    expect(first.get('units')).toHaveLength(198);
    expect(first.get('plan')).toHaveLength(200);
  });

  it('are written so that nothing is computed, and read back unchanged: every canonical table', async () => {
    for (const { bytes } of tables) expectSafe(new TextDecoder().decode(bytes));
    const again = await records(tables);
    for (const { name, rows } of again) expect(rows, name).toEqual(first.get(name));
  });

  it('are written so in every table of the batch commands and the list of held rows, which comes back', async () => {
    const database = await openNodeDatabase();
    try {
      const analysis = await openAnalysis(
        await database.connect(),
        given,
        'own',
        { asOf: null, groupBy: 'frame' },
        async () => {},
      );
      const { fleet, imported } = analysis;
      const results = [
        ...(await resultTables(new FleetAnswers(analysis, async () => {}))),
        questionsTable(imported.questions),
      ];
      for (const table of results) expectSafe(written(table));
      expect(results.filter(({ rows }) => rows.length > 0).map(({ name }) => name)).toEqual(
        expect.arrayContaining(['margins', 'problems', 'orders']),
      );
      const held = fleet.problems.filter(({ action }) => action === 'held');
      expect(held.length).toBeGreaterThan(500);
      const csv = heldRowsCsv(held);
      expectSafe(csv);
      const ruled = csv.replaceAll(/,,,$/gm, ',,leave out,');
      const back = readHeldRowsCsv({ name: 'held-rows.csv', bytes: encode(ruled) }, '');
      expect(back?.faults).toEqual([]);
      const raws = new Set(back?.given.map(({ ruling }) => ruling.raw));
      for (const text of formulas.filter((one) => one === one.trim()))
        expect(raws.has(text.replace(/^'(?=')/, '')) || raws.has(fromSpreadsheet(text)), text).toBe(true);
    } finally {
      await database.close();
    }
  });
});
