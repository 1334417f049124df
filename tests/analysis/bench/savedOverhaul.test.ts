import { expect, test } from 'vitest';
import { emptyEntry } from '../../../lib/analysis/bench/benchEntry';
import { benchFiles } from '../../../lib/analysis/bench/benchFiles';
import { Engine } from '../../../lib/analysis/engine/Engine';
import { countingDatabase } from '../../support/countingDatabase';
import { MemoryStore } from '../../support/memoryStore';

const counted = countingDatabase();
const sheet =
  'unit,frame,date,unit_hours,runout_found_mm\nR 1,Wren,2016-02-03,8120,0.031\nR 1,Wren,2018-02-03,16000,0.034\nR-1,Wren,2018-02-03,15000,0.03\n';
const bytes = (text: string) => new TextEncoder().encode(text).buffer;
const silent = () => {};

test('an overhaul saved among the own files takes its own place when it is saved again, and can be taken out again', async () => {
  const engine = new Engine({
    openDatabase: counted.openDatabase,
    demoFiles: async () => [],
    now: () => '2026-03-01T08:00:00.000Z',
    store: new MemoryStore(),
  });
  await engine.addFiles([{ name: 's.csv', bytes: bytes(sheet) }], silent);
  const items = [{ characteristic: 'runout', shape: 'single' as const }];
  const place = { unit: 'R 1', site: null, engine: null, bank: null };
  const filesWith = (unit: string, text: string) =>
    benchFiles({ ...place, unit }, items, {
      ...emptyEntry(unit),
      date: '2020-02-03',
      unitHours: '24 000',
      texts: { 'runout found': text },
    });
  const save = (unit: string, text: string) =>
    engine.addFiles(
      filesWith(unit, text).map((file) => ({ name: file.name, bytes: bytes(file.text) })),
      silent,
    );
  const found = async () => {
    const result = await engine.ask('unit', ['R 1']);
    return result?.series.find(({ series }) => series === 'runout')?.readings.map(({ value_mm }) => value_mm);
  };
  await save('R 1', '0,037');
  expect(await found()).toEqual([0.031, 0.034, 0.037]);
  await save('R 1', '0,036');
  expect(await found()).toEqual([0.031, 0.034, 0.036]);
  // Serials that differ in one sign only have files of their own.
  await save('R-1', '0.035');
  expect(await engine.ownFileNames()).toHaveLength(5);
  expect(await found()).toEqual([0.031, 0.034, 0.036]);
  await engine.removeFiles(
    filesWith('R 1', '0.036').map(({ name }) => name),
    silent,
  );
  expect(await found()).toEqual([0.031, 0.034]);
  expect(await engine.ownFileNames()).toHaveLength(3);
});

test('files of an overhaul without a day, hours or a reading are refused', () => {
  const items = [{ characteristic: 'runout', shape: 'single' as const }];
  const place = { unit: 'R-1', site: null, engine: null, bank: null };
  expect(() => benchFiles(place, items, emptyEntry('R-1'))).toThrow(
    'a day, the hours on the unit and one reading',
  );
});
