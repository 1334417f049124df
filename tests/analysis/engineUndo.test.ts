import { expect, test } from 'vitest';
import { Engine } from '../../lib/analysis/engine/Engine';
import { acknowledgement } from '../../lib/records/decisions/acknowledgements';
import { rowKey, tableEdit } from '../../lib/records/decisions/tableEdits';
import { countingDatabase } from '../support/countingDatabase';

const counted = countingDatabase();

const sheet = new TextEncoder().encode(
  'unit,frame,date,unit_hours,runout_found_mm\nR-1,Wren,2016-02-03,8120,0.031\nR-1,Wren,2018-02-03,16000,0.034\nR-2,Wren,2018-02-03,15000,0.03\n',
);
const silent = () => {};

test('an edited row is undone and done again with the files, a remark without them; both survive a file added later', async () => {
  const engine = new Engine({
    openDatabase: counted.openDatabase,
    demoFiles: async () => [],
    now: () => '2026-03-01T08:00:00.000Z',
  });
  await engine.addFiles([{ name: 's.csv', bytes: sheet.slice().buffer }], silent);
  const cells = { frame: 'Wren', series: 'runout', limit_kind: 'upper', limit: '0.05' };
  const edit = tableEdit('limits', rowKey('limits', cells), cells, null);
  const limitOf = (outcome: Awaited<ReturnType<Engine['decide']>>) =>
    outcome.ok ? outcome.fleet.margins.map(({ limit_mm }) => limit_mm) : outcome.message;
  expect(limitOf(await engine.decide([edit], silent))).toEqual([0.05, 0.05]);
  await engine.note([
    acknowledgement({ source: 'own', unit: 'R-1', series: 'runout', upTo: '2018-02-03', remark: 'seen' }),
  ]);
  expect(counted.connections).toBe(2);
  await engine.undoNotes(2);
  expect((await engine.journal()).map(({ act, undoes }) => [act, undoes])).toEqual([
    ['decided', undefined],
    ['decided', undefined],
    ['taken back', 2],
  ]);
  await engine.redoNotes(2);
  await engine.undoNotes(2);
  expect(counted.connections).toBe(2);

  expect(limitOf(await engine.undo(1, silent))).toEqual([]);
  // Pressed twice before the page knew, it undoes once.
  expect(limitOf(await engine.undo(1, silent))).toEqual([]);
  expect(limitOf(await engine.redo(1, silent))).toEqual([0.05, 0.05]);
  expect(counted.connections).toBe(5);

  const limits = 'frame,series,limit_kind,limit\nWren,runout,upper,0.04\n';
  const added = await engine.addFiles(
    [{ name: 'limits.csv', bytes: new TextEncoder().encode(limits).buffer }],
    silent,
  );
  expect(limitOf(added)).toEqual([0.05, 0.05]);
  expect(limitOf(await engine.undo(1, silent))).toEqual([0.04, 0.04]);
});
