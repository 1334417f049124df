import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { defaultDecisionSettings } from '../../lib/analysis/decisions/defaultDecisionSettings';
import { Engine } from '../../lib/analysis/engine/Engine';
import { changedVerdicts } from '../../lib/analysis/tables/changedVerdicts';
import { type RowTexts, rowKey, tableEdit } from '../../lib/records/decisions/tableEdits';
import type { Database } from '../../lib/store/Connector';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';

let database: Database;
let engine: Engine;
const silent = () => {};
const dropped = (name: string) => ({
  name,
  bytes: new Uint8Array(readFileSync(`data/examples/${name}`)).buffer,
});

beforeAll(async () => {
  database = await openNodeDatabase();
  engine = new Engine({
    openDatabase: async () => database,
    demoFiles: async () => [],
    now: () => '2026-03-01T08:00:00.000Z',
  });
  await engine.addFiles([dropped('kestrel-wide.csv'), dropped('limits.csv')], silent);
});
afterAll(() => database.close());

const thrustPlay = {
  frame: 'Kestrel',
  series: 'thrust_play',
  limit_kind: 'upper',
  reset_by: 'TB-K',
  valid_from: '2014-01-01',
};
const edit = (cells: RowTexts) => tableEdit('limits', rowKey('limits', cells), cells, null);
const opened = async () => {
  const [rows, decisions, outcome] = [
    await engine.ask('tableRows', ['limits']),
    await engine.ask('decisions', [defaultDecisionSettings]),
    await engine.journal(),
  ];
  return JSON.stringify([rows, decisions, outcome]);
};

test('the effect of an edit is what it changes when it is applied, and nothing that is open or decided before that', async () => {
  const before = await opened();
  const lower = edit({ ...thrustPlay, limit: '0.25' });
  const { changed, units, held } = await engine.effect([lower]);
  expect(await opened()).toBe(before);
  expect([units, held]).toEqual([8, []]);
  expect(changed.length).toBeGreaterThan(0);
  expect(new Set(changed.map(({ series }) => series))).toEqual(new Set(['thrust_play']));
  for (const { before: was, after } of changed) {
    expect([was?.limit_mm, after?.limit_mm]).toEqual([0.36, 0.25]);
    expect(after?.chanceNow ?? 0).toBeGreaterThanOrEqual(was?.chanceNow ?? 0);
  }

  const start = await engine.openOwn(silent);
  const decisions = (await engine.ask('decisions', [defaultDecisionSettings])) ?? [];
  const applied = await engine.decide([lower], silent);
  if (!start.ok || !applied.ok) throw new Error('the files could not be opened');
  expect(
    changedVerdicts(
      { margins: start.fleet.margins, decisions },
      {
        margins: applied.fleet.margins,
        decisions: (await engine.ask('decisions', [defaultDecisionSettings])) ?? [],
      },
    ),
  ).toEqual(changed);
  await engine.undo(1, silent);
});

test('a cell that would be held is told with its reason', async () => {
  const { held } = await engine.effect([edit({ ...thrustPlay, limit: 'O.25' })]);
  expect(held.map(({ column, raw, reason }) => [column, raw, reason])).toEqual([
    ['limit', 'O.25', 'not a number (digits with a decimal point are expected)'],
  ]);
});

test('stopped, it leaves everything as it was', async () => {
  const before = await opened();
  const asked = engine.effect([edit({ ...thrustPlay, limit: '0.25' })]);
  setTimeout(() => void engine.stopEffect(), 20);
  await expect(asked).rejects.toThrow('The comparison was stopped. Nothing was changed.');
  expect(await opened()).toBe(before);
});

test('the demo fleet is not edited', async () => {
  const other = new Engine({
    openDatabase: async () => database,
    demoFiles: async () => [],
    now: () => '2026-03-01T08:00:00.000Z',
  });
  await expect(other.effect([])).rejects.toThrow('None of your files is open');
});
