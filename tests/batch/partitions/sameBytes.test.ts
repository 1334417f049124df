import { appendFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { analyseFlat } from '../../../lib/batch/analyseFlat';
import { packAsParquet } from '../../../lib/batch/bench/packAsParquet';
import { readDataFolder } from '../../../lib/batch/partitions/readDataFolder';
import { analysed, textsIn, writeSmallFleet } from './madeFolders';

const folder = mkdtempSync(join(tmpdir(), 'parts-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The flat analysis goes another way: one database, one fleet, no merging. */
let flat: Readonly<Record<string, string>> = {};
let data = '';

beforeAll(async () => {
  const { shared } = await readDataFolder(await writeSmallFleet(join(folder, 'flat'), false));
  const out = join(folder, 'flat-out');
  mkdirSync(out);
  expect(await analyseFlat(shared, { out, asOf: null, groupBy: 'frame' })).toBe(0);
  flat = await textsIn(out);
  data = await writeSmallFleet(join(folder, 'parts'), true);
});

describe('a partitioned folder gives the bytes of the same rows in a flat one', () => {
  it('has all tables to compare, none of them empty but problems', () => {
    expect(Object.keys(flat)).toEqual([
      'demand.csv',
      'fits.csv',
      'margins.csv',
      'orders.csv',
      'problems.csv',
      'signals.csv',
      'sisters.csv',
    ]);
    for (const [name, text] of Object.entries(flat))
      if (name !== 'problems.csv') expect(text.split('\n').length, name).toBeGreaterThan(3);
  });

  it.each([1, 2, 3])('CSV, %i threads', async (threads) => {
    const out = join(folder, `csv-${threads}`);
    expect((await analysed(data, out, threads)).ok).toBe(true);
    expect(await textsIn(out)).toEqual(flat);
  });

  it('all folders in one database', async () => {
    const out = join(folder, 'together');
    const outcome = await analysed(data, out, 2, 1e9);
    expect(outcome.ok && outcome.parts.map(({ folders }) => folders.length)).toEqual([3]);
    expect(await textsIn(out)).toEqual(flat);
  });

  it('Parquet, numbers and days typed', async () => {
    const packed = await writeSmallFleet(join(folder, 'packed'), true);
    await packAsParquet(packed);
    const out = join(folder, 'parquet-out');
    expect((await analysed(packed, out, 2)).ok).toBe(true);
    expect(await textsIn(out)).toEqual(flat);
  });

  it('where the first look takes a day for the latest that the import then holds', async () => {
    const late = 'T-9/1,T-9,2027-03-01,100,,Quay,E-9,A,North yard,planned,,\n';
    const [whole, parts] = [join(folder, 'late-flat'), join(folder, 'late-parts')];
    appendFileSync(join(await writeSmallFleet(whole, false), 'overhauls.csv'), late);
    appendFileSync(join(await writeSmallFleet(parts, true), 'frame=Frame 0002', 'overhauls.csv'), late);
    const [wholeOut, out] = [`${whole}-out`, `${parts}-out`];
    mkdirSync(wholeOut);
    const { shared } = await readDataFolder(whole);
    await analyseFlat(shared, { out: wholeOut, asOf: null, groupBy: 'frame' });
    expect(await analysed(parts, out, 2)).toMatchObject({ ok: true, asOf: '2026-06-30' });
    const [{ 'problems.csv': held, ...expected }, { 'problems.csv': heldInPart, ...tables }] = [
      await textsIn(wholeOut),
      await textsIn(out),
    ];
    expect(tables).toEqual(expected);
    expect(held).toMatch(/\noverhauls\.csv,\d+,unit,T-9,/);
    expect(heldInPart).toMatch(/\nframe=Frame 0002\/overhauls\.csv,\d+,unit,T-9,/);
    // Every part is analysed twice here.
  }, 240_000);

  it('a flat folder of Parquet files', async () => {
    const packed = await writeSmallFleet(join(folder, 'packed-flat'), false);
    await packAsParquet(packed);
    const out = join(folder, 'packed-flat-out');
    mkdirSync(out);
    const { shared } = await readDataFolder(packed);
    expect(await analyseFlat(shared, { out, asOf: null, groupBy: 'frame' })).toBe(0);
    expect(await textsIn(out)).toEqual(flat);
  });
});
