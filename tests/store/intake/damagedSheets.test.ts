import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { InputFile } from '../../../lib/records/importReport';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { importSheets } from './importSheets';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const folder = 'data/examples/sheets';
const sheets = readdirSync(folder)
  .filter((name) => name.endsWith('.csv'))
  .sort()
  .map((name) => new Uint8Array(readFileSync(join(folder, name))));

const generator = xoroshiro128plus(60_606);
const upTo = (largest: number) => uniformInt(generator, 0, largest);

function spliced(bytes: Uint8Array, at: number, dropped: number, piece: Uint8Array): Uint8Array {
  return new Uint8Array([...bytes.subarray(0, at), ...piece, ...bytes.subarray(at + dropped)]);
}

const pieces = [
  '"',
  ';',
  ',',
  '\t',
  '\r',
  '\n',
  '\u0000',
  '\u001f',
  '\u001e',
  '=',
  "'",
  '0',
  '.',
  '-',
  '\ud83d\ude00',
].map((text) => new TextEncoder().encode(text));
const mutations: readonly ((bytes: Uint8Array) => Uint8Array)[] = [
  (bytes) => spliced(bytes, upTo(bytes.length), 0, pieces[upTo(pieces.length - 1)] as Uint8Array),
  (bytes) => spliced(bytes, upTo(bytes.length), upTo(12), new Uint8Array()),
  (bytes) => spliced(bytes, upTo(bytes.length), 1, Uint8Array.of(upTo(255))),
  (bytes) => {
    const start = upTo(bytes.length);
    return spliced(bytes, upTo(bytes.length), 0, bytes.slice(start, start + upTo(120)));
  },
  (bytes) => bytes.slice(0, Math.max(1, upTo(bytes.length))),
];

function damaged(name: string, original: Uint8Array): InputFile {
  let bytes = original;
  for (let times = upTo(3); times >= 0; times--)
    bytes = mutations[upTo(mutations.length - 1)]?.(bytes) ?? bytes;
  return { name, bytes };
}

describe('damaged sheets through the whole import', () => {
  it('never throw, and every cell is used, says that there is none, or is held', async () => {
    const seen = { used: 0, held: 0, refused: 0 };
    for (let round = 0; round < 20; round++) {
      const files = Array.from({ length: 4 }, (_, place) =>
        damaged(`sheet-${place}.csv`, sheets[(4 * round + place) % sheets.length] as Uint8Array),
      );
      // importSheets checks that no reading is lost and that the counts of each file add up.
      const { files: counts, problems } = await importSheets(database, files);
      expect(counts.map(({ file }) => file)).toEqual(files.map(({ name }) => name));
      for (const file of counts) {
        const listed = problems.some((one) => one.file === file.file && one.action === 'held');
        if (file.readingsHeld > 0) expect(listed, file.file).toBe(true);
        if (file.table === null) expect(file.message?.length, file.file).toBeGreaterThan(10);
        seen.used += file.readingsUsed;
        seen.held += file.readingsHeld;
        seen.refused += file.table === null ? 1 : 0;
      }
    }
    expect(seen.used).toBeGreaterThan(150);
    expect(seen.held).toBeGreaterThan(100);
    expect(seen.refused).toBeGreaterThan(8);
  }, 120_000);
});
