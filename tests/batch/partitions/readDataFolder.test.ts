import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { readDataFolder } from '../../../lib/batch/partitions/readDataFolder';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'listed-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

function put(...names: string[]): void {
  for (const name of names) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), 'x\n');
  }
}

it('lists shared files and parts in order of name, whatever depth the parts lie at', async () => {
  put('plan.csv', 'limits.parquet', 'b/readings.csv', 'a/frame=X/units.csv', 'a/frame=X/readings.PARQUET');
  const { shared, parts } = await readDataFolder(folder);
  expect(shared.map(({ name }) => name)).toEqual(['limits.parquet', 'plan.csv']);
  expect(parts.map(({ name, files }) => [name, files.map((file) => file.name)])).toEqual([
    ['a/frame=X', ['a/frame=X/readings.PARQUET', 'a/frame=X/units.csv']],
    ['b', ['b/readings.csv']],
  ]);
});

it('leaves folders without tables of units alone, as a flat folder may have them', async () => {
  put('overhauls.csv', 'sheets/north yard.csv', 'results/margins.csv');
  const { shared, parts } = await readDataFolder(folder);
  expect([shared.map(({ name }) => name), parts]).toEqual([['overhauls.csv'], []]);
});

it('refuses tables of units beside parts, and a folder with nothing to read', async () => {
  put('north/notes.csv');
  await expect(readDataFolder(folder)).rejects.toThrow(/holds no \.csv file/);
  put('overhauls.csv', 'north/overhauls.csv');
  await expect(readDataFolder(folder)).rejects.toThrow(/'overhauls.csv' lies beside the folder 'north'/);
});
