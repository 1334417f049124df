import { expect, it } from 'vitest';
import { asHeld, asStored, large_bytes } from '../../../lib/analysis/engine/kept/largeFiles';

interface File {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** So many bytes that are not all alike. */
function bytesOf(length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  for (let place = 0; place < length; place += 997) bytes[place] = (place * 31) % 251;
  return bytes;
}

const isSame = (one: Uint8Array, other: Uint8Array) => Buffer.compare(one, other) === 0;

it('files come back byte for byte; only large ones lie as Blobs', async () => {
  const files: readonly File[] = [
    { name: 'small.csv', bytes: bytesOf(10) },
    { name: 'large.csv', bytes: bytesOf(large_bytes) },
  ];
  const stored = asStored(files) as readonly { name: string; bytes: unknown }[];
  expect(stored.map(({ name, bytes }) => [name, bytes instanceof Blob])).toEqual([
    ['small.csv', false],
    ['large.csv', true],
  ]);
  const held = (await asHeld(stored)) as readonly File[];
  expect(held.map(({ name }) => name)).toEqual(files.map(({ name }) => name));
  expect(held.every(({ bytes }, place) => isSame(bytes, files[place]?.bytes as Uint8Array))).toBe(true);
});

it('a part of a larger buffer is stored as that part', async () => {
  const bytes = bytesOf(large_bytes + 5_000).subarray(1_000, 1_000 + large_bytes);
  const [held] = (await asHeld(asStored([{ name: 'part.csv', bytes }]))) as readonly File[];
  expect(isSame(held?.bytes as Uint8Array, bytes)).toBe(true);
});

it('everything else is as it is', async () => {
  for (const value of ['own', null, 7, { version: '1' }, [{ id: 'a' }, 'b', null]]) {
    expect(asStored(value)).toEqual(value);
    expect(await asHeld(value)).toEqual(value);
  }
});
