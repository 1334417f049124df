import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const parts = ['app', 'lib/charts', 'lib/analysis', 'lib/stats', 'lib/store', 'lib/records'];
/** Where numbers are written: for screens, for sentences that go to files too, and for questions about an engine's meter. */
const writers = [
  'lib/charts/format.ts',
  'lib/stats/sentenceNumbers.ts',
  'lib/store/intake/meters/meterRecords.ts',
].map((path) => join(path));
const writes = /\.toFixed\(|\.toLocale\w*String\(|\bIntl\.(?!Collator\b)/;
const roundsDigits = /\.toPrecision\(/;

const sources = parts.flatMap((part) =>
  readdirSync(part, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name)),
);

test('numbers and days are written in one place, so that the choice of the reader holds everywhere', () => {
  const others = sources.filter((path) => !writers.includes(path) && writes.test(readFileSync(path, 'utf8')));
  expect(others).toEqual([]);
  for (const path of writers) expect(readFileSync(path, 'utf8'), path).toMatch(writes);
});

test('screens and pictures round digits nowhere else either', () => {
  const onScreen = sources.filter((path) => path.startsWith('app') || path.startsWith(join('lib', 'charts')));
  const others = onScreen.filter(
    (path) => !writers.includes(path) && roundsDigits.test(readFileSync(path, 'utf8')),
  );
  expect(onScreen.length).toBeGreaterThan(100);
  expect(others).toEqual([]);
});
