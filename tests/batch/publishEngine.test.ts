import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { publishDatabase, publishDemo } from '../../lib/batch/publishEngine.mjs';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'endfloat-publish-'));
});

afterEach(() => rmSync(folder, { recursive: true }));

describe('publishDatabase', () => {
  const packageOf = (version: string, program: string) => {
    const from = join(folder, 'package');
    mkdirSync(join(from, 'dist'), { recursive: true });
    writeFileSync(join(from, 'package.json'), JSON.stringify({ version }));
    writeFileSync(join(from, 'dist', 'duckdb-browser-eh.worker.js'), 'worker');
    writeFileSync(join(from, 'dist', 'duckdb-eh.wasm'), program);
    return from;
  };

  test('copies the worker and packs the program; packs again only for another version', () => {
    const to = join(folder, 'engine');
    const packed = join(to, 'duckdb-eh.wasm.gz');
    publishDatabase(packageOf('1', 'first'), to);
    expect(readFileSync(join(to, 'duckdb-browser-eh.worker.js'), 'utf8')).toBe('worker');
    expect(gunzipSync(readFileSync(packed)).toString()).toBe('first');
    expect(readdirSync(to).some((name) => name.endsWith('.part'))).toBe(false);

    const long = new Date('2020-01-01T00:00:00Z');
    utimesSync(packed, long, long);
    publishDatabase(packageOf('1', 'first'), to);
    expect(statSync(packed).mtimeMs).toBe(long.getTime());

    publishDatabase(packageOf('2', 'second'), to);
    expect(gunzipSync(readFileSync(packed)).toString()).toBe('second');
  });

  test('packs again if the last time was broken off', () => {
    const to = join(folder, 'engine');
    publishDatabase(packageOf('1', 'first'), to);
    rmSync(join(to, 'version.txt'));
    writeFileSync(join(to, 'duckdb-eh.wasm.gz'), 'half');
    publishDatabase(packageOf('1', 'first'), to);
    expect(gunzipSync(readFileSync(join(to, 'duckdb-eh.wasm.gz'))).toString()).toBe('first');
  });
});

describe('publishDemo', () => {
  test('copies the CSV files, lists them, and drops what is gone', () => {
    const from = join(folder, 'demo');
    const to = join(folder, 'public');
    mkdirSync(from);
    writeFileSync(join(from, 'units.csv'), 'unit\n');
    writeFileSync(join(from, 'notes.txt'), 'no table');
    mkdirSync(to);
    writeFileSync(join(to, 'old.csv'), 'old');
    publishDemo(from, to);
    expect(readdirSync(to).sort()).toEqual(['index.json', 'units.csv']);
    expect(JSON.parse(readFileSync(join(to, 'index.json'), 'utf8'))).toEqual(['units.csv']);
  });

  test('says how to make the files if there are none', () => {
    expect(() => publishDemo(join(folder, 'none'), join(folder, 'public'))).toThrow(
      /requires CSV files in .*npm run demo/,
    );
  });
});
