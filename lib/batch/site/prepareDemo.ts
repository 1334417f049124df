import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packAnswers } from './packAnswers';

const folder = join('public', 'demo');
const names = readdirSync(folder).filter((name) => name.endsWith('.csv'));
const files = names.map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(folder, name))) }));

packAnswers(files, folder).catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.stack : error}\n`);
  process.exitCode = 1;
});
