import fc from 'fast-check';
import { expect, it } from 'vitest';
import { packRows, unpackRows } from '../../../lib/analysis/engine/packedRows';
import { fleet } from '../../app/fixture';

const number = fc.oneof(fc.double({ noNaN: true }), fc.constant(null));
const text = fc.oneof(fc.string(), fc.constantFrom('lark', 'heron'), fc.constant(null));
const point = fc.record({ date: text, chance: number }, { noNullPrototype: true });
const anything = fc.anything({ withNullPrototype: false }).filter((value) => value !== undefined);
const row = fc.record(
  { number, text, truth: fc.boolean(), points: fc.array(point, { maxLength: 4 }), anything },
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
