import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { readSheet } from './readSheet';
import { workshopSheets } from './workshopSheets';

const mutationCount = 10_000;
const generator = xoroshiro128plus(90_210);
const upTo = (largest: number) => uniformInt(generator, 0, largest);

/** A copy with a piece put in at a place. */
function inserted(bytes: Uint8Array, at: number, piece: Uint8Array): Uint8Array {
  const longer = new Uint8Array(bytes.length + piece.length);
  longer.set(bytes.subarray(0, at));
  longer.set(piece, at);
  longer.set(bytes.subarray(at), at + piece.length);
  return longer;
}

const mutations: readonly ((bytes: Uint8Array) => Uint8Array)[] = [
  (bytes) => {
    const flipped = bytes.slice();
    for (let times = upTo(8); times >= 0; times--) {
      const at = upTo(bytes.length - 1);
      flipped[at] = (flipped[at] as number) ^ (1 << upTo(7));
    }
    return flipped;
  },
  (bytes) => bytes.slice(0, upTo(bytes.length)),
  (bytes) => bytes.slice(upTo(bytes.length)),
  (bytes) => inserted(bytes, upTo(bytes.length), Uint8Array.of(0x22)),
  (bytes) => inserted(bytes, upTo(bytes.length), new Uint8Array(1 + upTo(3))),
  (bytes) =>
    inserted(bytes, upTo(bytes.length), Uint8Array.of([0x0d, 0x0a, 0x1e, 0x1f, 0x1a][upTo(4)] as number)),
  (bytes) =>
    inserted(
      bytes,
      upTo(bytes.length),
      Uint8Array.from({ length: upTo(60) }, () => upTo(255)),
    ),
  (bytes) => {
    const start = upTo(bytes.length);
    return inserted(bytes, upTo(bytes.length), bytes.slice(start, start + upTo(300)));
  },
];
/** Lines of up to 400 kB of one character: one mutation in a hundred. */
const enormous = (bytes: Uint8Array) =>
  inserted(
    bytes,
    upTo(bytes.length),
    new Uint8Array(1 + upTo(400_000)).fill([0x22, 0x2c, 0x3b, 0x61, 0xc3][upTo(4)] as number),
  );

describe('damaged sheets', () => {
  it('never throw, never hang, and lose no line', () => {
    const sheets = Object.values(workshopSheets);
    const outcomes = { read: 0, refused: 0, withHeld: 0 };
    const start = performance.now();
    for (let count = 0; count < mutationCount; count++) {
      let bytes: Uint8Array = sheets[count % sheets.length] as Uint8Array;
      for (let times = upTo(2); times >= 0 && bytes.length > 0; times--) {
        const mutate = count % 100 === 0 ? enormous : mutations[upTo(mutations.length - 1)];
        bytes = mutate?.(bytes) ?? bytes;
      }
      const sheet = readSheet(bytes);
      if ('reason' in sheet) {
        expect(sheet.reason.length).toBeGreaterThan(10);
        outcomes.refused++;
        continue;
      }
      expect(sheet.rowsIn).toBe(sheet.records + sheet.held);
      expect(sheet.lines.every(({ cells }) => cells.length >= 1)).toBe(true);
      expect(sheet.layout.firstBodyLine).toBeGreaterThan(sheet.layout.preambleLines);
      outcomes.read++;
      if (sheet.held > 0) outcomes.withHeld++;
    }
    expect(performance.now() - start).toBeLessThan(60_000);
    expect(outcomes.read + outcomes.refused).toBe(mutationCount);
    // The mutations must reach the code behind the refusals, and both of its ends.
    expect(outcomes.read).toBeGreaterThan(mutationCount / 2);
    expect(outcomes.refused).toBeGreaterThan(100);
    expect(outcomes.withHeld).toBeGreaterThan(100);
  }, 120_000);
});
