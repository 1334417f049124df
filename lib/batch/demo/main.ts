import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { demoFiles } from './demoFiles';

const dataDirectory = fileURLToPath(new URL('../../../data', import.meta.url));

for (const [path, text] of Object.entries(demoFiles())) {
  const target = resolve(dataDirectory, path);
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, text);
  console.log(`data/${path}: ${text.split('\n').length - 1} lines`);
}
