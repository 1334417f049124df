import { describe, expect, test } from 'vitest';
import { demoFiles } from '../../../lib/batch/demo/demoFiles';
import { committed, table } from './demoTables';

describe('demo files', () => {
  const files = demoFiles();

  test.each(Object.keys(files))('data/%s is what the generator writes, byte for byte', (path) => {
    expect(files[path]).toBe(committed(path));
  });

  test('two runs write the same', () => {
    expect(demoFiles()).toEqual(files);
  });

  test('no file holds a value that is no value', () => {
    for (const [path, text] of Object.entries(files)) {
      expect(text.match(/NaN|Infinity|undefined/), path).toBeNull();
    }
  });

  test('six stations, 28 engines, 52 units of three frames, four workshops', async () => {
    const [units, installations, overhauls, plan] = await Promise.all(
      ['units', 'installations', 'overhauls', 'plan'].map((name) => table(`demo/${name}.csv`)),
    );
    const distinct = (rows: typeof units, column: string) =>
      new Set(rows?.map((row) => row[column]).filter((cell) => cell !== ''));
    expect(units).toHaveLength(52);
    expect([...distinct(units, 'frame')].sort()).toEqual(['Heron', 'Lark', 'Osprey']);
    expect(distinct(installations, 'site').size).toBe(6);
    expect(distinct(installations, 'engine').size).toBe(28);
    expect(distinct(plan, 'engine').size).toBe(28);
    expect([...distinct(overhauls, 'workshop')].sort()).toEqual([
      'Dunlin Service',
      'Fulmar Rotor Shop',
      'Kittiwake Yard',
      'Merrow Works',
    ]);
    // 51 positions; the one unit without a position lies in store.
    expect(installations?.filter((row) => row.to_date === '')).toHaveLength(51);
    expect(plan).toHaveLength(51);
  });

  test('the example sheet has 8 units of one frame and some 30 overhauls', async () => {
    const rows = await table('examples/kestrel-wide.csv');
    expect(new Set(rows.map((row) => row.unit)).size).toBe(8);
    expect(new Set(rows.map((row) => row.frame))).toEqual(new Set(['Kestrel']));
    expect(rows.length).toBeGreaterThanOrEqual(28);
    expect(rows.length).toBeLessThanOrEqual(36);
    const limits = await table('examples/limits.csv');
    expect(new Set(limits.map((row) => row.frame))).toEqual(new Set(['Kestrel']));
  });
});
