import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const worker = 'duckdb-browser-eh.worker.js';
const wasm = 'duckdb-eh.wasm';

/**
 * Copies what the page fetches at run time into public/: the database's worker and its packed program, and the demo fleet.
 * The program is packed here because many hosts neither pack it nor take a file of its size.
 */
export function publishEngine(root) {
  publishDatabase(join(root, 'node_modules', '@duckdb', 'duckdb-wasm'), join(root, 'public', 'engine'));
  publishDemo(join(root, 'data', 'demo'), join(root, 'public', 'demo'));
}

/** Packing takes seconds: it is done once a version, which version.txt notes last of all. */
export function publishDatabase(from, to) {
  const { version } = JSON.parse(readFileSync(join(from, 'package.json'), 'utf8'));
  const note = join(to, 'version.txt');
  const names = [worker, `${wasm}.gz`];
  if (
    existsSync(note) &&
    readFileSync(note, 'utf8') === version &&
    names.every((name) => existsSync(join(to, name)))
  )
    return;
  mkdirSync(to, { recursive: true });
  rmSync(note, { force: true });
  copyFileSync(join(from, 'dist', worker), join(to, worker));
  const packed = join(to, `${wasm}.gz`);
  writeFileSync(`${packed}.part`, gzipSync(readFileSync(join(from, 'dist', wasm)), { level: 9 }));
  renameSync(`${packed}.part`, packed);
  writeFileSync(note, version);
}

/** Copies the CSV files and lists them in index.json; files that are gone from the fleet go from here too. */
export function publishDemo(from, to) {
  const names = existsSync(from) ? readdirSync(from).filter((name) => name.endsWith('.csv')) : [];
  if (names.length === 0)
    throw new Error(`publishDemo requires CSV files in ${from}, got none: run npm run demo`);
  rmSync(to, { recursive: true, force: true });
  mkdirSync(to, { recursive: true });
  for (const name of names) copyFileSync(join(from, name), join(to, name));
  writeFileSync(join(to, 'index.json'), `${JSON.stringify(names.sort(), null, 1)}\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  publishEngine(fileURLToPath(new URL('../..', import.meta.url)));
