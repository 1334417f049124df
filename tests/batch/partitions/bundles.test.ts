import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { bundlesOf } from '../../../lib/batch/partitions/bundles';
import { readDataFolder } from '../../../lib/batch/partitions/readDataFolder';
import { surveyParts } from '../../../lib/batch/partitions/surveyParts';
import { writeSmallFleet } from './madeFolders';

const folder = mkdtempSync(join(tmpdir(), 'bundles-'));
afterAll(() => rmSync(folder, { recursive: true }));

const parts = Array.from({ length: 7 }, (_, k) => {
  const path = join(folder, `readings-${k}.csv`);
  writeFileSync(path, 'x'.repeat(k === 4 ? 50 : 10));
  return { name: `part ${k}`, files: [{ name: `part ${k}/readings.csv`, path }] };
});
const foldersOf = async (alone: readonly string[], most?: number) =>
  (await bundlesOf(parts, new Set(alone), most)).map(({ folders }) =>
    folders.map((name) => name.slice(5)).join(''),
  );

it('puts neighbours together up to the load, keeps their order, and leaves none out', async () => {
  expect(await foldersOf([], 20)).toEqual(['01', '23', '4', '56']);
  expect(await foldersOf([], 1e9)).toEqual(['0123456']);
  expect(await foldersOf([], 0)).toEqual(['0', '1', '2', '3', '4', '5', '6']);
});

it('those that must stay alone do, and what they hold belongs to no other', async () => {
  expect(await foldersOf(['part 1', 'part 6'], 1e9)).toEqual(['0', '1', '2345', '6']);
});

it('by itself shares a fleet out over four databases, or a multiple of four, of much the same size', async () => {
  expect(await foldersOf([])).toEqual(['012', '3', '4', '56']);
  const alike = Array.from({ length: 100 }, (_, k) => {
    const path = join(folder, `large-${k}.csv`);
    writeFileSync(path, '');
    truncateSync(path, 1_240_000);
    return { name: `part ${k}`, files: [{ name: `part ${k}/readings.csv`, path }] };
  });
  const sizes = (await bundlesOf(alike, new Set())).map(({ folders }) => folders.length);
  expect(sizes).toHaveLength(8);
  expect(sizes.reduce((sum, size) => sum + size)).toBe(100);
  expect(Math.min(...sizes)).toBe(12);
  expect(Math.max(...sizes)).toBe(13);
});

it('the survey leaves folders alone that name an overhaul or engine of another, or have a further table', async () => {
  const data = await writeSmallFleet(join(folder, 'fleet'), true);
  const edit = (part: number, file: string, from: RegExp | string, to: string) => {
    const path = join(data, `frame=Frame 000${part}`, file);
    writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
  };
  const alone = async () => [...(await surveyParts(await readDataFolder(data), null)).alone].sort();
  expect(await alone()).toEqual([]);
  writeFileSync(join(data, 'frame=Frame 0003', 'events.csv'), 'date,engine,kind,value\n');
  expect(await alone()).toEqual(['frame=Frame 0003']);
  const [engine] = /E-\d+/.exec(readFileSync(join(data, 'frame=Frame 0001', 'plan.csv'), 'utf8')) ?? [''];
  edit(2, 'plan.csv', /E-\d+/, engine);
  expect(await alone()).toEqual(['frame=Frame 0001', 'frame=Frame 0002', 'frame=Frame 0003']);
  rmSync(data, { recursive: true });
  await writeSmallFleet(data, true);
  const [overhaul] = /T-\d+\/1/.exec(
    readFileSync(join(data, 'frame=Frame 0001', 'overhauls.csv'), 'utf8'),
  ) ?? [''];
  edit(3, 'overhauls.csv', /T-\d+\/1/, overhaul);
  expect(await alone()).toEqual(['frame=Frame 0001', 'frame=Frame 0003']);
});
