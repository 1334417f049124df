import fc from 'fast-check';
import { expect, it } from 'vitest';
import { buffersOf, rowViews, unpackRows } from '../../../lib/analysis/engine/packedRows';
import { packRows } from '../../../lib/analysis/engine/packRows';
import { fleet } from '../../app/fixture';

const number = fc.oneof(fc.double({ noNaN: true }), fc.constant(null));
const text = fc.oneof(fc.string(), fc.constantFrom('lark', 'heron'), fc.constant(null));
const anything = fc.anything({ withNullPrototype: false }).filter((value) => value !== undefined);
const row = fc.record(
  {
    number,
    text,
    truth: fc.boolean(),
    numbers: fc.array(fc.double({ noNaN: true }), { maxLength: 4 }),
    anything,
    words: fc.array(text, { maxLength: 3 }),
    table: fc.array(fc.record({ name: text, amount: number, truths: fc.array(fc.boolean()) }), {
      maxLength: 3,
    }),
  },
  { noNullPrototype: true },
);

it('rows come back as they were, over a copy to another thread', () => {
  fc.assert(
    fc.property(fc.array(row), (rows) => {
      expect(unpackRows(structuredClone(packRows(rows)))).toEqual(rows);
    }),
    { numRuns: 300, seed: 5 },
  );
});

it('margins come back to the last digit, properties in their order', () => {
  const { margins } = fleet();
  expect(JSON.stringify(unpackRows(structuredClone(packRows(margins))))).toBe(JSON.stringify(margins));
});

it('views give what whole rows give', () => {
  fc.assert(
    fc.property(fc.array(row), (rows) => {
      const names = Object.keys(rows[0] ?? {}) as (keyof (typeof rows)[number])[];
      const views = rowViews<(typeof rows)[number]>(structuredClone(packRows(rows)));
      expect(views.map((view) => names.map((name) => view[name]))).toEqual(
        rows.map((one) => names.map((name) => one[name])),
      );
    }),
    { numRuns: 200, seed: 6 },
  );
});

it('memory handed to another thread holds all of the rows', () => {
  fc.assert(
    fc.property(fc.array(row), (rows) => {
      const packed = packRows(rows);
      const buffers = buffersOf(packed);
      expect(unpackRows(structuredClone(packed, { transfer: [...buffers] }))).toEqual(rows);
      expect(buffers.every(({ byteLength }) => byteLength === 0)).toBe(true);
    }),
    { numRuns: 100, seed: 7 },
  );
});
