import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { buildProgram } from '../../../lib/batch/program/buildProgram.mjs';
import { sourceHash } from '../../../lib/batch/site/sourceHash.mjs';

const root = mkdtempSync(join(tmpdir(), 'built-'));
afterAll(() => rmSync(root, { recursive: true }));
for (const folder of ['lib/parts', 'app']) mkdirSync(join(root, folder), { recursive: true });
for (const file of ['next.config.mjs', 'package-lock.json']) writeFileSync(join(root, file), '');
const builds = join(root, 'node_modules/.cache/endfloat');
const entries = { answer: 'lib/answer.ts' };

function writeSources(answer: string): void {
  writeFileSync(join(root, 'lib/parts/part.ts'), `export const part: number = ${answer};`);
  writeFileSync(
    join(root, 'lib/answer.ts'),
    "import { part } from './parts/part';\nexport const answer = part + 1;\nexport const place = import.meta.url;",
  );
}

const build = () => buildProgram(root, entries, sourceHash(root));
const loaded = async (folder: string) => import(pathToFileURL(join(folder, 'answer.mjs')).href);

it('builds once for the same sources, and anew when one of them changes by a character of the same length', async () => {
  writeSources('41');
  const first = await build();
  expect((await loaded(first)).answer).toBe(42);
  expect(await build()).toBe(first);
  writeSources('51');
  const second = await build();
  expect(second).not.toBe(first);
  expect((await loaded(second)).answer).toBe(52);
});

it('a source says where it lies itself', async () => {
  expect((await loaded(await build())).place).toBe(pathToFileURL(join(root, 'lib/answer.ts')).href);
});

it('several that build at the same time all get the same whole build, and nothing is left beside it', async () => {
  writeSources('61');
  const before = readdirSync(builds).length;
  const program = pathToFileURL('lib/batch/program/buildProgram.mjs').href;
  const words = [root, entries, sourceHash(root)].map((value) => JSON.stringify(value)).join(', ');
  const script = `const { buildProgram } = await import('${program}'); const folder = await buildProgram(${words});
    const { answer } = await import(new URL('answer.mjs', 'file://' + folder + '/').href); console.log(answer);`;
  const answers = await Promise.all([script, script, script].map(printed));
  expect(answers).toEqual(['62\n', '62\n', '62\n']);
  expect(readdirSync(builds)).toHaveLength(before + 1);
});

it('what cannot be built is an error and leaves nothing', async () => {
  const before = readdirSync(builds);
  writeSources('(');
  await expect(build()).rejects.toThrow();
  expect(readdirSync(builds)).toEqual(before);
});

function printed(script: string): Promise<string> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--input-type=module', '--eval', script]);
    let text = '';
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (piece) => {
        text += piece;
      });
    child.once('close', () => resolve(text));
  });
}
