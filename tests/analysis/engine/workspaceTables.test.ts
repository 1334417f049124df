import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FleetAnswers } from '../../../lib/analysis/engine/FleetAnswers';
import { problemsTable, type ResultTable } from '../../../lib/analysis/fleetTables';
import { canonicalRows, questionsTable } from '../../../lib/analysis/intakeTables';
import { openAnalysis } from '../../../lib/analysis/openAnalysis';
import { resultTables } from '../../../lib/analysis/resultTables';
import { writeCsv } from '../../../lib/records/csv/writeCsv';
import { acknowledgement } from '../../../lib/records/decisions/acknowledgements';
import type { Decision } from '../../../lib/records/decisions/Decision';
import { withDecisions, withTakenBack } from '../../../lib/records/decisions/journal';
import { rulingId } from '../../../lib/records/decisions/rulings';
import { decisionsForReading, rowKey, tableEdit } from '../../../lib/records/decisions/tableEdits';
import type { Workspace } from '../../../lib/records/workspace/Workspace';
import { readWorkspaceFile, workspaceFile } from '../../../lib/records/workspace/workspaceFile';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { withRecords } from '../../support/withRecords';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const textOf = ({ header, rows }: ResultTable) => writeCsv(header, rows);

/** Every table that the batch commands write, as text, by name. */
async function tablesOf({ files, journal }: Workspace): Promise<ReadonlyMap<string, string>> {
  const connector = await database.connect();
  try {
    const decisions = decisionsForReading(journal);
    const settings = { asOf: null, groupBy: 'frame', decisions } as const;
    const analysis = await openAnalysis(connector, files, 'own', settings, async () => {});
    const tables: readonly ResultTable[] = [
      ...(await resultTables(new FleetAnswers(analysis, async () => {}))),
      questionsTable(analysis.fleet.questions),
      await canonicalRows(connector, 'overhauls'),
      await canonicalRows(connector, 'readings'),
    ];
    return new Map(tables.map((table) => [table.name, textOf(table)]));
  } finally {
    await connector.close();
  }
}

const lines = (name: string) => readFileSync(`data/demo/${name}`, 'utf8').split('\n');
const overhauls = new Set(
  lines('overhauls.csv').flatMap((line) => (/^OH-\d+,L-/.test(line) ? [line.split(',')[0]] : [])),
);

/** A table of the demo fleet without the lines of other frames than Lark: the whole fleet takes too long. */
function demoFile(name: string) {
  const [head, ...body] = lines(name);
  const ofLark = body.filter((line) =>
    line.startsWith('OH-') ? overhauls.has(line.split(',')[0]) : !/\b(Heron|Osprey|[HO]-\d+)\b/.test(line),
  );
  return { name, bytes: new TextEncoder().encode([head, ...ofLark].join('\n')) };
}

const files = readdirSync('data/demo')
  .filter((name) => name.endsWith('.csv'))
  .map(demoFile);
const at = '2026-03-01T08:00:00.000Z';

/** Rulings on held cells, an edited limit and an acknowledgement, one of the rulings taken back. */
function journalOf(problems: string) {
  const held = problems
    .split('\n')
    .map((line) => line.split(','))
    .filter(([file, , column, raw]) => file === 'readings.csv' && column === 'value' && raw !== '');
  const rulings = held.slice(0, 4).map(([file = '', line, column = '', raw = '']): Decision => {
    const place = { file, line: Number(line), column };
    const said = { ruling: 'edit', text: '0.30', reason: 'typing fault', by: 'AB' } as const;
    return { kind: 'ruling', id: rulingId(place), ...place, raw, ...said };
  });
  const cells = {
    frame: 'Lark',
    series: 'thrust_play',
    limit_kind: 'upper',
    limit: '0.28',
    reset_by: 'TB-L',
    valid_from: '2014-01-01',
  };
  const others = [
    tableEdit('limits', rowKey('limits', cells), cells, null),
    acknowledgement({ source: 'own', unit: 'L-1', series: 'runout', upTo: '2020-01-01', remark: 'seen' }),
  ];
  const decided = withDecisions([], [...rulings, ...others], { at, by: 'AB' });
  return withTakenBack(
    decided,
    rulings.slice(0, 1).map(({ id }) => id),
    { at, by: '' },
  );
}

describe('a workspace file, sealed', () => {
  it('rebuilds every table of the batch commands byte for byte from files and journal', async () => {
    const problems = await withRecords(files, async (_, imported) => textOf(problemsTable(imported)));
    const workspace = { files, journal: journalOf(problems) };
    expect(workspace.journal.length).toBeGreaterThanOrEqual(5);
    const before = await tablesOf(workspace);
    // The decisions are there to be lost: without them the tables are others.
    expect(before.get('problems')).not.toBe(problems);
    expect(before.get('margins')).toContain(',0.28,');

    const read = await readWorkspaceFile(await workspaceFile(workspace, at, 'two words'), 'two words');
    expect(read).toEqual(workspace);
    const after = await tablesOf(read);
    expect([...after.keys()]).toEqual([...before.keys()]);
    for (const [name, text] of before) expect(after.get(name) === text, name).toBe(true);
  });
});
