import { readFileSync } from 'node:fs';
import { csvFormatRows, csvParse, csvParseRows } from 'd3-dsv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { decisionsOf } from '../../../lib/analysis/decisions/decisionsOf';
import { defaultSparesSettings } from '../../../lib/analysis/demand/defaultSparesSettings';
import { drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { sparesOf } from '../../../lib/analysis/demand/sparesOf';
import { chartedSeries } from '../../../lib/analysis/drift/chartedSeries';
import { driftResult, usualDriftSettings } from '../../../lib/analysis/drift/driftResult';
import { type Analysis, onDay, openAnalysis } from '../../../lib/analysis/openAnalysis';
import { planningOf } from '../../../lib/analysis/plan/planning';
import type { PaperSource } from '../../../lib/analysis/report/paperOf';
import { reportOf } from '../../../lib/analysis/report/reportOf';
import { wholeFleet } from '../../../lib/analysis/scope';
import type { MarginRow } from '../../../lib/analysis/types';
import type { InputFile } from '../../../lib/records/importReport';
import type { Row } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { readingsInOrderSql } from '../../../lib/store/sql/readingsInOrder';
import { filesOf } from '../../support/withRecords';

const day = '2024-10-21';
const idle = async () => {};

let database: Awaited<ReturnType<typeof openNodeDatabase>>;
let open: Analysis;
let earlier: Analysis;
let before: readonly Row[];

async function analysed(files: readonly InputFile[], asOf: string | null): Promise<Analysis> {
  return openAnalysis(await database.connect(), files, 'demo', { asOf, groupBy: 'frame' }, idle);
}

/** The demo's files as they would have been written on the day: without later overhauls and their readings. */
function filesOfDay(): readonly InputFile[] {
  const later = new Set<string>();
  const cut = (
    name: string,
    bytes: Uint8Array,
    keep: (row: readonly string[], head: readonly string[]) => boolean,
  ) => {
    const [head = [], ...rows] = csvParseRows(new TextDecoder().decode(bytes));
    return {
      name,
      bytes: new TextEncoder().encode(csvFormatRows([head, ...rows.filter((row) => keep(row, head))])),
    };
  };
  const cell = (row: readonly string[], head: readonly string[], column: string) =>
    row[head.indexOf(column)] ?? '';
  const files = filesOf('data/demo');
  const overhauls = files
    .filter(({ name }) => name === 'overhauls.csv')
    .map(({ name, bytes }) =>
      cut(name, bytes, (row, head) => {
        if (cell(row, head, 'date') <= day) return true;
        later.add(cell(row, head, 'overhaul'));
        return false;
      }),
    );
  const readings = files
    .filter(({ name }) => name === 'readings.csv')
    .map(({ name, bytes }) => cut(name, bytes, (row, head) => !later.has(cell(row, head, 'overhaul'))));
  const others = files.filter(({ name }) => name !== 'overhauls.csv' && name !== 'readings.csv');
  return [...overhauls, ...readings, ...others];
}

/** What the fits of an analysis are made from, and what later questions about it are. */
async function readingsOf({ connector, groupTable, fleet }: Analysis): Promise<readonly Row[]> {
  return connector.query(readingsInOrderSql(groupTable), [fleet.asOf]);
}

/** What a paper is made from, with fewer draws than the pages take. */
async function sourceOf(analysis: Analysis): Promise<PaperSource> {
  const planning = await planningOf(analysis);
  const drawn = drawFleet(planning, { draws: 60 });
  const charted = await chartedSeries(analysis, idle);
  return {
    analysis,
    decisions: async (settings) => decisionsOf(planning, settings),
    drift: async (settings) => driftResult(analysis.fleet, charted, settings),
    spares: async (settings) => sparesOf(drawn, settings),
    drawnFleet: async () => drawn,
  };
}

beforeAll(async () => {
  database = await openNodeDatabase();
  open = await analysed(filesOf('data/demo'), null);
  before = await readingsOf(open);
  earlier = await onDay(open, day, idle);
});
afterAll(() => database.close());

/** Equal but for the order in which the database adds up. */
function expectSame(
  values: readonly (number | string | null)[],
  others: readonly (number | string | null)[],
  name: string,
): void {
  expect(values.length).toBe(others.length);
  for (const [index, value] of values.entries()) {
    const other = others[index];
    if (typeof value !== 'number' || typeof other !== 'number') expect(value, name).toBe(other);
    else expect(Math.abs(value - other), name).toBeLessThanOrEqual(1e-7 * Math.abs(other) + 1e-12);
  }
}

const wear = (margins: readonly MarginRow[]) =>
  new Map(
    margins.map(({ unit, series, limitKind, ...rest }) => [
      `${unit} ${series} ${limitKind}`,
      [
        rest.level_mm,
        rest.levelSd_mm,
        rest.slope_mm_per_10kh,
        rest.hoursEarly,
        rest.hoursMedian,
        rest.reason,
      ],
    ]),
  );

describe('the records as of an earlier day', () => {
  it('say of wear what files written on that day say', async () => {
    const written = await analysed(filesOfDay(), day);
    const [now, then] = [wear(earlier.fleet.margins), wear(written.fleet.margins)];
    expect(now.size).toBeGreaterThan(400);
    expect([...now.keys()]).toEqual([...then.keys()]);
    for (const [name, values] of now) expectSame(values, then.get(name) ?? [], name);
  });

  it('plan a unit that was opened since at its interval, and not at the overhaul that the plan names after that', () => {
    const next = new Map(earlier.fleet.units.map((unit) => [unit.unit, unit.nextOverhaulDate]));
    const planned = new Map(open.fleet.units.map((unit) => [unit.unit, unit]));
    let opened = 0;
    for (const [unit, date] of next) {
      const { lastOverhaulDate, nextOverhaulDate } = planned.get(unit) as (typeof open.fleet.units)[number];
      if (date === null || nextOverhaulDate === null) continue;
      if (lastOverhaulDate !== null && lastOverhaulDate > day) {
        opened++;
        expect(date < nextOverhaulDate).toBe(true);
      } else expect(date).toBe(nextOverhaulDate);
    }
    expect(opened).toBeGreaterThan(40);
  });

  it('leave what is open as it was', async () => {
    const after = await readingsOf(open);
    expect(after).toHaveLength(before.length);
    for (const [index, row] of before.entries())
      expectSame(Object.values(row), Object.values(after[index] ?? {}), JSON.stringify(row));
    expect((await readingsOf(earlier)).length).toBeLessThan(before.length);
  });
});

describe('the paper of the demo fleet', () => {
  it('holds a scope’s own units, decisions, findings, parts and held rows, and names what changed', async () => {
    const sources = new Map([
      [open.fleet.asOf, await sourceOf(open)],
      [day, await sourceOf(earlier)],
    ]);
    const asked = {
      asOf: open.fleet.asOf,
      since: day,
      spares: defaultSparesSettings,
      drift: usualDriftSettings,
    };
    const on = async (of: string) => sources.get(of) as PaperSource;
    const { paper, compared } = await reportOf({ ...asked, scope: wholeFleet }, on);
    expect(paper.fleet.units).toHaveLength(52);
    const days = csvParse(readFileSync('data/demo/overhauls.csv', 'utf8')).map(({ date = '' }) => date);
    expect(paper.firstDate).toBe(days.toSorted()[0]);
    // Two lines of overhauls.csv and eleven readings, of which two name no unit that there is.
    expect(paper.held.reduce((sum, { held }) => sum + held, 0)).toBe(13);
    expect(paper.held.at(-1)).toMatchObject({ unit: null, held: 2, effect: 'unit not known' });
    expect(paper.held[0]).toMatchObject({ unit: 'H-2016', held: 2, reasons: 2 });
    expect(compared?.since).toBe(day);
    // The fast thrust bearing of the demo fleet shows in readings of the last two years only.
    const waiting =
      compared?.changes.filter(({ about, way }) => about === 'cannot wait' && way === 'new') ?? [];
    expect(waiting.map((change) => 'unit' in change && change.unit)).toContain('O-3005');

    const scope = { ...wholeFleet, frame: 'Osprey' };
    const osprey = (await reportOf({ ...asked, since: null, scope }, on)).paper;
    const names = new Set(osprey.fleet.units.map(({ unit }) => unit));
    expect([...names].every((name) => name.startsWith('O-'))).toBe(true);
    expect(osprey.fleet.margins.every(({ unit }) => names.has(unit))).toBe(true);
    expect(osprey.decisions.map(({ unit }) => unit).toSorted()).toEqual([...names].toSorted());
    expect(osprey.drift.findings.every(({ unit }) => names.has(unit))).toBe(true);
    expect(osprey.drift.findings.length).toBeGreaterThan(0);
    expect(osprey.spares.orders.every(({ part }) => part.endsWith('-O'))).toBe(true);
    expect(osprey.held.map(({ unit }) => unit)).toEqual(['O-3002', 'O-3006', 'O-3008', null]);
    // Parts of one frame are taken by its own units alone.
    for (const { part, demandMean } of osprey.spares.orders) {
      expect(osprey.ownDemand?.find((one) => one.part === part)?.mean).toBeCloseTo(demandMean, 12);
    }
    expect(osprey.spares.totals[0]?.cost).toBeLessThan(paper.spares.totals[0]?.cost ?? 0);
  });
});
