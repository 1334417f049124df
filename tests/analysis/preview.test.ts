import { afterAll, beforeAll, expect, test } from 'vitest';
import { Engine } from '../../lib/analysis/engine/Engine';
import { meaningDecision } from '../../lib/records/decisions/meaningDecision';
import { sheetShape } from '../../lib/records/intake/sheetShape';
import type { Database } from '../../lib/store/Connector';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const names = ['Kennung', 'Wann', 'Zähler', 'M1'];
const bytes = new TextEncoder().encode(
  `${names.join(';')}\nR-1;03.02.2016;8120;0,31\nR-1;21.05.2018;16900;0,35\nR-2;14.07.2017;7900;0,28\n`,
);
const play = meaningDecision({
  file: 'mute.csv',
  shape: sheetShape(names),
  index: 3,
  column: 'M1',
  role: 'reading',
  characteristic: 'thrust_play',
  stage: 'found',
  clock: null,
  uom: 'mm',
});

test('a preview decides nothing; decided, it is what is opened, and taken back it is gone', async () => {
  const engine = new Engine({
    openDatabase: async () => database,
    demoFiles: async () => [],
    now: () => '2026-03-01T08:00:00.000Z',
  });
  const silent = () => {};
  const refused = await engine.addFiles([{ name: 'mute.csv', bytes: bytes.slice().buffer }], silent);
  expect(refused.ok).toBe(false);
  if (refused.ok) return;
  expect(refused.sheets.map(({ file, reason }) => [file, reason?.slice(0, 21)])).toEqual([
    ['mute.csv', 'Not an overhaul sheet'],
  ]);

  const preview = await engine.preview('mute.csv', [play]);
  expect([preview.readingsUsed, preview.sheet.reason]).toEqual([3, null]);
  expect(await engine.journal()).toEqual([]);
  expect((await engine.preview('mute.csv', [])).sheet.reason).toContain('Not an overhaul sheet');
  await expect(engine.preview('other.csv', [])).rejects.toThrow('is not among those read');

  const opened = await engine.decide([play], silent);
  expect(opened.ok && opened.fleet.files.map(({ readingsUsed }) => readingsUsed)).toEqual([3]);
  expect((await engine.journal()).map(({ act, decision }) => [act, decision.id])).toEqual([
    ['decided', play.id],
  ]);
  expect((await engine.takeBack([play.id], silent)).ok).toBe(false);
});

test('decisions about files to come are kept while the demo fleet stays open', async () => {
  const demo = [
    {
      name: 's.csv',
      bytes: new TextEncoder().encode(
        'unit,date,unit_hours,thrust_play_found_mm\nR-1,2016-02-03,8120,0.31\nR-1,2018-02-03,16000,0.34\n',
      ),
    },
  ];
  const engine = new Engine({
    openDatabase: async () => database,
    demoFiles: async () => demo,
    now: () => '2026-03-01T08:00:00.000Z',
  });
  expect((await engine.openDemo(() => {})).ok).toBe(true);
  const kept = await engine.decide([play], () => {});
  expect(kept.ok && [kept.fleet.source, kept.message]).toEqual([
    'demo',
    'Kept in this browser for files of the same shape: add yours.',
  ]);
  const added = await engine.addFiles([{ name: 'later.csv', bytes: bytes.slice().buffer }], () => {});
  expect(added.ok && added.fleet.files.map(({ file, readingsUsed }) => [file, readingsUsed])).toEqual([
    ['later.csv', 3],
  ]);
});
