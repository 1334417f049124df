import { readFileSync } from 'node:fs';
import { csvParse } from 'd3-dsv';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { FleetAnswers } from '../../lib/analysis/engine/FleetAnswers';
import { canonicalRows, questionsTable } from '../../lib/analysis/intakeTables';
import { openAnalysis } from '../../lib/analysis/openAnalysis';
import { resultTables } from '../../lib/analysis/resultTables';
import type { FleetResult } from '../../lib/analysis/types';
import { canonicalTables } from '../../lib/records/canonicalTables';
import { writeCsv } from '../../lib/records/csv/writeCsv';
import { acknowledgement } from '../../lib/records/decisions/acknowledgements';
import type { Decision, JournalEntry } from '../../lib/records/decisions/Decision';
import { decisionsInForce, withDecisions, withTakenBack } from '../../lib/records/decisions/journal';
import { meaningDecision } from '../../lib/records/decisions/meaningDecision';
import { rulingId } from '../../lib/records/decisions/rulings';
import { redoable, undoable, withRedone, withUndone } from '../../lib/records/decisions/steps';
import { decisionsForReading, rowKey, tableEdit } from '../../lib/records/decisions/tableEdits';
import type { InputFile } from '../../lib/records/importReport';
import type { Database } from '../../lib/store/Connector';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';
import { textFile } from '../support/textFile';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const example = (name: string): InputFile => ({
  name,
  bytes: new Uint8Array(readFileSync(`data/examples/${name}`)),
});

/** The example sheet without its clock readings, which would only take time. */
function sheetWithoutClocks(): InputFile {
  const rows = csvParse(readFileSync('data/examples/kestrel-wide.csv', 'utf8'));
  const columns = rows.columns.filter((name) => !name.startsWith('tip_'));
  return textFile(
    'kestrel.csv',
    writeCsv(
      columns,
      rows.map((row) => columns.map((name) => row[name] ?? '')),
    ),
  );
}

const files = [
  sheetWithoutClocks(),
  example('limits.csv'),
  textFile(
    'parts.csv',
    'part,frame,resets,per_unit,lead_time_weeks,on_hand\nTB-K,Kestrel,thrust_play,1,2O,1\nCW-K,Kestrel,,1,30,0',
  ),
  example('sheets/03-text-in-cells.csv'),
  example('sheets/04-duplicates-and-revisions.csv'),
  example('sheets/07-thou-and-day-month.csv'),
];

type Journal = readonly JournalEntry[];

async function opened(decisions: readonly Decision[]) {
  const connector = await database.connect();
  const settings = { asOf: null, groupBy: 'frame', decisions } as const;
  const analysis = await openAnalysis(connector, files, 'own', settings, async () => {});
  const tables = [
    ...(await resultTables(new FleetAnswers(analysis, async () => {}))),
    questionsTable(analysis.fleet.questions),
  ];
  for (const { name } of canonicalTables) tables.push(await canonicalRows(connector, name));
  await connector.close();
  const written = tables.map(({ name, header, rows }) => `${name}.csv\n${writeCsv(header, rows)}`).join('\n');
  return { fleet: analysis.fleet, written };
}

const tablesAfter = async (journal: Journal) => (await opened(decisionsForReading(journal))).written;

/** Everything that may be decided about the open files, of every kind, several ways about each thing. */
function everyDecision({ questions, problems, sheets }: FleetResult): readonly Decision[] {
  const answers = questions.flatMap(({ id, file, column, question, choices }) =>
    choices.map((answer): Decision => ({ kind: 'answer', id, file, column, question, answer })),
  );
  const held = problems.filter(({ action }) => action === 'held');
  const rulings = held.flatMap(({ file, row, column, raw }) => {
    const place = { file, line: row, column };
    const common = {
      kind: 'ruling',
      id: rulingId(place),
      ...place,
      raw,
      reason: 'as the card says',
      by: '',
    } as const;
    return [
      { ...common, ruling: 'leave out', text: null },
      { ...common, ruling: 'release', text: null },
      { ...common, ruling: 'edit', text: '0.2' },
    ] as const;
  });
  const meanings = sheets.flatMap(({ file, shape, columns, names }) =>
    columns
      .filter(({ role }) => role === 'reading')
      .flatMap(({ index, characteristic, stage }) =>
        (['reading', 'unused'] as const).map((role) =>
          meaningDecision({
            file,
            shape,
            index,
            column: names[index] ?? '',
            role,
            characteristic: role === 'reading' ? characteristic : null,
            stage: role === 'reading' ? stage : null,
            clock: null,
            uom: role === 'reading' ? 'um' : null,
          }),
        ),
      ),
  );
  const edits = ['thrust_play', 'runout'].flatMap((series) => {
    const cells = { frame: 'Kestrel', series, limit_kind: 'upper', valid_from: '2014-01-01' };
    const key = rowKey('limits', cells);
    return [
      ...['0.3', '0.04', '0,5'].map((limit) => tableEdit('limits', key, { ...cells, limit }, null)),
      tableEdit('limits', key, null, null),
    ];
  });
  const part = { part: 'TB-K', frame: 'Kestrel', resets: 'thrust_play', lead_time_weeks: '20' };
  const plan = { engine: 'GUL-1', bank: 'A', hours_per_year: '5000', next_overhaul_date: '2027-05-01' };
  return [
    ...answers,
    ...rulings,
    ...meanings,
    ...edits,
    tableEdit('parts', rowKey('parts', part), part, null),
    tableEdit('plan', rowKey('plan', plan), plan, null),
    acknowledgement({ source: 'own', unit: 'K-4001', series: 'runout', upTo: '2024-01-01', remark: 'seen' }),
  ];
}

test('a hundred decisions undone and done again leave every table byte for byte as it was', async () => {
  const generator = xoroshiro128plus(20_261_125);
  const below = (count: number) => uniformInt(generator, 0, count - 1);
  const start = await opened([]);
  const possible = everyDecision(start.fleet);
  expect(new Set(possible.map(({ kind }) => kind)).size).toBe(5);

  const at = (step: number) => ({ at: new Date(Date.UTC(2026, 0, 1, 0, step)).toISOString(), by: 'AB' });
  const journals: Journal[] = [[]];
  let journal: Journal = [];
  while (journal.length < 100) {
    const inForce = decisionsInForce(journal);
    const several = Array.from({ length: 1 + below(4) });
    const next =
      inForce.length > 5 && below(4) === 0
        ? withTakenBack(
            journal,
            several.map(() => inForce[below(inForce.length)]?.id ?? ''),
            at(journals.length),
          )
        : withDecisions(
            journal,
            several.map(() => possible[below(possible.length)] as Decision),
            at(journals.length),
          );
    if (next.length === journal.length) continue;
    journal = next;
    journals.push(journal);
  }
  const steps = journals.length - 1;
  const middle = Math.floor(steps / 2);
  const end = await tablesAfter(journal);
  const between = await tablesAfter(journals[middle] as Journal);
  expect(new Set([start.written, between, end]).size).toBe(3);

  const move = (way: 'undo' | 'redo', times: number) => {
    for (let time = 0; time < times; time++)
      journal =
        way === 'undo'
          ? withUndone(journal, undoable(journal, 'own')?.number ?? 0, at(steps + 1))
          : withRedone(journal, redoable(journal, 'own')?.number ?? 0, at(steps + 1));
  };
  move('undo', steps - middle);
  expect(await tablesAfter(journal)).toBe(between);
  move('undo', middle);
  expect(undoable(journal, 'own')).toBeNull();
  expect(await tablesAfter(journal)).toBe(start.written);
  move('redo', steps);
  expect(redoable(journal, 'own')).toBeNull();
  expect(await tablesAfter(journal)).toBe(end);
  // What holds is a set: the order in which it was decided makes no difference.
  expect((await opened(decisionsForReading(journal).toReversed())).written).toBe(end);
}, 120_000);
