import fc from 'fast-check';
import { expect, it } from 'vitest';
import { packAnswer, unpackAnswer } from '../../../lib/analysis/engine/packedAnswer';

const number = fc.oneof(fc.double({ noNaN: true }), fc.constant(null));
const interval = fc.record({ median: number, lower80: number }, { noNullPrototype: true });
const sisterRow = fc.record(
  {
    unit: fc.string(),
    q: fc.double({ noNaN: true }),
    rate: fc.record(
      { ratio: fc.oneof(interval, fc.constant(null)), difference: interval },
      { noNullPrototype: true },
    ),
  },
  { noNullPrototype: true },
);
/** Two shapes in one list, as units with a wear rate of their own and those without. */
const funnelUnit = fc.oneof(
  fc.record({ unit: fc.string(), own: number, reason: fc.constant(null) }, { noNullPrototype: true }),
  fc.record({ unit: fc.string(), reason: fc.string() }, { noNullPrototype: true }),
);
const sisters = fc.record(
  {
    asOf: fc.string(),
    groups: fc.array(
      fc.record(
        {
          group: fc.string(),
          rows: fc.array(sisterRow),
          rates: fc.oneof(
            fc.record({ centre: number, units: fc.array(funnelUnit) }, { noNullPrototype: true }),
            fc.constant(null),
          ),
        },
        { noNullPrototype: true },
      ),
      { maxLength: 4 },
    ),
  },
  { noNullPrototype: true },
);

/** What a reader of an answer finds who asks for every property by its name, in its order. */
function read(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(read);
  if (typeof value !== 'object' || value === null) return value;
  const found: Record<string, unknown> = {};
  for (const name in value) found[name] = read((value as Record<string, unknown>)[name]);
  return found;
}

/** The answer as it comes out on the page's side. */
function handedOver(question: string, answer: unknown): unknown {
  return unpackAnswer(structuredClone(packAnswer(question, answer)));
}

it('an answer about sisters is the same on the page', () => {
  fc.assert(
    fc.property(sisters, (answer) => {
      expect(read(handedOver('sisters', answer))).toEqual(answer);
    }),
    { numRuns: 300, seed: 11 },
  );
});

it('a list that is the answer keeps its rows, their order and what they hold', () => {
  fc.assert(
    fc.property(fc.array(sisterRow), (rows) => {
      expect(read(handedOver('decisions', rows))).toEqual(rows);
    }),
    { numRuns: 100, seed: 12 },
  );
});

it('a long list is handed over by column, the rows of a question that is not about one as they are', () => {
  const rows = Array.from({ length: 500 }, (_, place) => ({ unit: `U-${place}`, chance: place / 500 }));
  expect(JSON.stringify(packAnswer('decisions', rows)).includes('U-7')).toBe(true);
  expect(packAnswer('unit', { rows })).toEqual({ rows });
  expect(handedOver('unit', { rows })).toEqual({ rows });
  const packed = packAnswer('decisions', rows) as {
    packedLists: { answer: { packedList: { columns: object }[] } };
  };
  expect(Object.keys(packed.packedLists.answer.packedList[0]?.columns ?? {})).toEqual(['unit', 'chance']);
});

it('the lists of a thousand groups are a handful of columns, and each group finds its own rows', () => {
  const groups = Array.from({ length: 1000 }, (_, group) => ({
    group: `G-${group}`,
    rows: Array.from({ length: group % 4 }, (_, place) => ({
      unit: `U-${group}-${place}`,
      q: group + place / 10,
    })),
  }));
  const packed = packAnswer('sisters', { groups }) as { packedLists: { rows: { packedList: unknown[] } } };
  expect(packed.packedLists.rows.packedList.length).toBe(1);
  expect(read(handedOver('sisters', { groups }))).toEqual({ groups });
});

it('lists that nobody looks at are not made', () => {
  const answer = { groups: [{ rows: [{ unit: 'U-1' }] }] };
  const back = handedOver('sisters', answer) as typeof answer;
  const [group] = back.groups;
  const before = Object.getOwnPropertyDescriptor(group, 'rows');
  expect(before?.get).toBeTypeOf('function');
  expect(group?.rows).toBe(group?.rows);
  expect(group?.rows[0]?.unit).toBe('U-1');
});

it('what a list cannot be packed of comes over as it is', () => {
  const odd = { rows: [null, { unit: 'U-1' }], startRows: [[1], [2]], units: [] };
  expect(handedOver('sisters', odd)).toEqual(odd);
});
