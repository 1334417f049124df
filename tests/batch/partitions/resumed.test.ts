import { spawn } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { analysed, textsIn, writeSmallFleet } from './madeFolders';

const folder = mkdtempSync(join(tmpdir(), 'resumed-'));
afterAll(() => rmSync(folder, { recursive: true }));

const out = join(folder, 'out');
const partials = join(out, '.partial');
const kept = join(folder, 'kept');
let data = '';
let whole: Readonly<Record<string, string>> = {};

beforeAll(async () => {
  data = await writeSmallFleet(join(folder, 'data'), true);
  await analysed(data, join(folder, 'whole'), 2);
  whole = await textsIn(join(folder, 'whole'));
});

/** Parts that are finished: those still being written have another ending. */
const finished = () =>
  existsSync(partials) ? readdirSync(partials).filter((name) => !name.endsWith('.part')) : [];

it('a run that is killed leaves finished parts and no result', async () => {
  const command = spawn(process.execPath, [
    ...['--import', 'tsx', 'lib/batch/analyse.ts'],
    ...['--data', data, '--out', out, '--threads', '1', '--memory', '500'],
  ]);
  while (finished().length === 0 && command.exitCode === null)
    await new Promise((resolve) => setTimeout(resolve, 20));
  command.kill('SIGKILL');
  await new Promise((resolve) => command.once('exit', resolve));
  expect(finished().length).toBeGreaterThan(0);
  expect(finished().length).toBeLessThan(3);
  expect(readdirSync(out).filter((name) => name.endsWith('.csv'))).toEqual([]);
  cpSync(partials, kept, { recursive: true });
});

it('run again it gives the same bytes, and nothing is left beside them', async () => {
  expect((await analysed(data, out, 2)).ok).toBe(true);
  expect(await textsIn(out)).toEqual(whole);
  expect(readdirSync(out).filter((name) => !name.endsWith('.csv'))).toEqual([]);
});

it('what was finished is taken up, unless the bytes of the part have changed', async () => {
  cpSync(kept, partials, { recursive: true });
  const [part] = finished() as [string];
  const lines = join(partials, part, 'margins.lines');
  writeFileSync(lines, readFileSync(lines, 'utf8').replaceAll('Frame', 'Taken'));
  cpSync(partials, kept, { recursive: true });
  await analysed(data, out, 2);
  expect((await textsIn(out))['margins.csv']).toContain('Taken');
  cpSync(kept, partials, { recursive: true });
  for (const name of ['0001', '0002', '0003']) {
    const units = join(data, `frame=Frame ${name}`, 'units.csv');
    writeFileSync(units, `${readFileSync(units, 'utf8')}\n`);
  }
  await analysed(data, out, 2);
  expect((await textsIn(out))['margins.csv']).toBe(whole['margins.csv']);
});
