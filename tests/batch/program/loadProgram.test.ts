import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { textsIn, writeSmallFleet } from '../partitions/madeFolders';

const folder = mkdtempSync(join(tmpdir(), 'loaded-'));
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...words: readonly string[]) =>
  new Promise<string>((resolve, reject) => {
    execFile(process.execPath, words, (error, stdout, stderr) =>
      error === null ? resolve(stdout) : reject(new Error(stderr)),
    );
  });

// That threads, which are built too, write the same bytes is tested beside them: sameBytes.
it('the built command writes the same bytes as the sources', async () => {
  const data = await writeSmallFleet(join(folder, 'data'), false);
  const [built, plain] = [join(folder, 'built'), join(folder, 'plain')];
  await run('lib/batch/analyse.mjs', '--data', data, '--out', built);
  await run('--import', 'tsx', 'lib/batch/analyse.ts', '--data', data, '--out', plain);
  expect(await textsIn(built)).toEqual(await textsIn(plain));
}, 120_000);
