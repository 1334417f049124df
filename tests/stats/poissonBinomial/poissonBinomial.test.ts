import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chanceAtLeast,
  countQuantile,
  expectedShortage,
  poissonBinomial,
} from '../../../lib/stats/poissonBinomial/poissonBinomial';
import { evenly } from '../wear/evenly';

interface Reference {
  readonly p: readonly number[];
  readonly weights?: readonly number[];
  readonly pmf: readonly number[];
  readonly sf_P_gt_k?: readonly number[];
  readonly order_qty_smallest_k_with_cdf_ge_level?: Readonly<Record<string, number>>;
  readonly expected_shortage_given_stock_k?: readonly number[];
}

const references = Object.entries<Reference | string>(
  JSON.parse(readFileSync('tests/reference/poissonBinomial/poissonBinomial.json', 'utf8')),
).filter((entry): entry is [string, Reference] => typeof entry[1] !== 'string');

const chances = fc.array(evenly(0, 1), { maxLength: 60 });
const events = (values: readonly number[]) => values.map((chance) => ({ chance }));

/** What rounding a chance to a double makes of its complement, relative: large only for chances very near 1. */
function complementRounding(p: readonly number[]): number {
  return p.reduce((sum, chance) => (chance < 1 ? sum + 2 ** -53 / (1 - chance) : sum), 0);
}

/** 1e-12 absolute, and so close relative to itself however small it is. */
function expectClose(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(
    Math.min(1e-12, relative * Math.abs(expected) + 1e-300),
  );
}

describe.each(references)('poissonBinomial reproduces %s', (_, reference) => {
  const relative = 1e-12 + complementRounding(reference.p);
  // A weight says how often an event with that chance stands in the list.
  const times = reference.weights ?? reference.p.map(() => 1);
  const counts = poissonBinomial(
    reference.p.flatMap((chance, k) => Array.from({ length: times[k] as number }, () => ({ chance }))),
  );

  it('every chance, those of 1e-35 too', () => {
    expect(counts).toHaveLength(reference.pmf.length);
    for (const [k, chance] of reference.pmf.entries()) expectClose(counts[k] as number, chance, relative);
  });

  it('tails, order quantities and expected shortages', () => {
    for (const [k, chance] of (reference.sf_P_gt_k ?? []).entries()) {
      expectClose(chanceAtLeast(counts, k + 1), chance, relative);
    }
    for (const [level, k] of Object.entries(reference.order_qty_smallest_k_with_cdf_ge_level ?? {})) {
      expect(countQuantile(counts, Number(level)), level).toBe(k);
    }
    for (const [k, shortage] of (reference.expected_shortage_given_stock_k ?? []).entries()) {
      expectClose(expectedShortage(counts, k), shortage, relative);
    }
  });
});

describe('poissonBinomial', () => {
  it('sums to 1, with the mean and variance of the sum of the events', () => {
    fc.assert(
      fc.property(chances, (values) => {
        const counts = poissonBinomial(events(values));
        const total = counts.reduce((sum, chance) => sum + chance, 0);
        const mean = counts.reduce((sum, chance, k) => sum + k * chance, 0);
        const variance = counts.reduce((sum, chance, k) => sum + (k - mean) ** 2 * chance, 0);
        expect(total).toBeCloseTo(1, 12);
        expect(mean).toBeCloseTo(
          values.reduce((sum, p) => sum + p, 0),
          10,
        );
        expect(variance).toBeCloseTo(
          values.reduce((sum, p) => sum + p * (1 - p), 0),
          10,
        );
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it('does not depend on the order of the events', () => {
    fc.assert(
      fc.property(chances, (values) => {
        const [one, other] = [poissonBinomial(events(values)), poissonBinomial(events(values.toReversed()))];
        for (const [k, chance] of one.entries()) {
          expect(Math.abs(chance - (other[k] as number))).toBeLessThan(1e-13);
        }
      }),
      { seed: 2, numRuns: 50 },
    );
  });

  it('adds up pieces as the list of all outcomes does', () => {
    const list = fc.array(fc.record({ chance: evenly(0, 1), pieces: fc.integer({ min: 0, max: 4 }) }), {
      maxLength: 8,
    });
    fc.assert(
      fc.property(list, (own) => {
        const expected = new Map<number, number>();
        for (let outcome = 0; outcome < 2 ** own.length; outcome++) {
          const taken = (k: number) => ((outcome >> k) & 1) === 1;
          const pieces = own.reduce((sum, event, k) => sum + (taken(k) ? event.pieces : 0), 0);
          const chance = own.reduce(
            (product, event, k) => product * (taken(k) ? event.chance : 1 - event.chance),
            1,
          );
          expected.set(pieces, (expected.get(pieces) ?? 0) + chance);
        }
        for (const [k, chance] of poissonBinomial(own).entries())
          expect(chance).toBeCloseTo(expected.get(k) ?? 0, 12);
      }),
      { seed: 3, numRuns: 40 },
    );
  });

  it('refuses what is no chance, no whole number of pieces and no level', () => {
    expect(() => poissonBinomial([{ chance: 1.2 }])).toThrow('within 0 to 1, got 1.2');
    expect(() => poissonBinomial([{ chance: Number.NaN }])).toThrow('within 0 to 1');
    expect(() => poissonBinomial([{ chance: 0.5, pieces: 1.5 }])).toThrow('whole numbers of pieces, got 1.5');
    expect(() => countQuantile(Float64Array.of(1), 1)).toThrow('inside 0 to 1, got 1');
  });
});
