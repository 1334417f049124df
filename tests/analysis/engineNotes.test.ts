import { expect, test } from 'vitest';
import { usualDriftSettings } from '../../lib/analysis/drift/driftResult';
import { Engine } from '../../lib/analysis/engine/Engine';
import { acknowledgement } from '../../lib/records/decisions/acknowledgements';
import { countingDatabase } from '../support/countingDatabase';

const counted = countingDatabase();

const sheet = new TextEncoder().encode(
  'unit,date,unit_hours,runout_found_mm\nR-1,2016-02-03,8120,0.031\nR-1,2018-02-03,16000,0.034\nR-2,2018-02-03,15000,0.03\n',
);

test('an acknowledgement is noted, kept by what reads files, and taken back, without anything being read again', async () => {
  const engine = new Engine({
    openDatabase: counted.openDatabase,
    demoFiles: async () => [{ name: 's.csv', bytes: sheet }],
    now: () => '2026-03-01T08:00:00.000Z',
  });
  expect((await engine.openDemo(() => {})).ok).toBe(true);
  const before = await engine.ask('drift', [usualDriftSettings]);
  const noted = acknowledgement({
    source: 'demo',
    unit: 'R-1',
    series: 'runout',
    upTo: '2018-02-03',
    remark: 'seen',
  });
  await engine.signAs('AB');
  await engine.note([noted]);
  expect((await engine.journal()).map(({ act, by, decision }) => [act, by, decision])).toEqual([
    ['decided', 'AB', noted],
  ]);
  expect(counted.connections).toBe(1);
  expect(await engine.ask('drift', [usualDriftSettings])).toBe(before);

  // Own files are read with the acknowledgement in the journal, and it changes nothing of them.
  const own = await engine.addFiles([{ name: 's.csv', bytes: sheet.slice().buffer }], () => {});
  expect(own.ok && own.fleet.files.map(({ readingsUsed }) => readingsUsed)).toEqual([3]);
  expect(counted.connections).toBe(2);

  await engine.takeNotesBack([noted.id]);
  expect((await engine.journal()).map(({ act }) => act)).toEqual(['decided', 'taken back']);
  expect(counted.connections).toBe(2);
});
