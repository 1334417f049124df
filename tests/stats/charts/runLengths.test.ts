import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { averageRunLength } from '../../../lib/stats/charts/averageRunLength';
import { expectedSignals } from '../../../lib/stats/charts/expectedSignals';
import { expectedPatterns } from '../../../lib/stats/charts/runRuleCosts';
import { thresholdForBudget, thresholdsForBudget } from '../../../lib/stats/charts/thresholdForBudget';
import { chartReference } from './reference';

interface RunLengths {
  readonly ewma: readonly {
    lambda: number;
    L: number;
    shift: number;
    ARL_zero_state_fixed_limits: number;
    ARL_time_varying_limits: number;
  }[];
  readonly cusum: readonly {
    k: number;
    h: number;
    shift: number;
    ARL_two_sided: number;
    ARL_one_sided_upper: number;
  }[];
  readonly crit: {
    readonly ewma_L_for_ARL0: readonly { lambda: number; ARL370: number; ARL500: number; ARL100: number }[];
    readonly cusum_h_for_ARL0: readonly { k: number; ARL370: number; ARL500: number; ARL100: number }[];
  };
  readonly shewhart_3sigma: { readonly ARL0: number; readonly ARL1: number };
}
const reference = chartReference<RunLengths>('runLengths');

/** Furthest relative departure of ours from the published run lengths. */
function furthest(pairs: readonly (readonly [number, number])[]): number {
  return Math.max(...pairs.map(([ours, theirs]) => Math.abs(ours / theirs - 1)));
}

describe('average run lengths lie within 0.5 % of those by integral equations', () => {
  it('EWMA, exact and final limits', () => {
    const pairs = reference.ewma.flatMap(({ lambda, L, shift, ...arl }) => {
      const chart = { kind: 'ewma', sides: 'both', lambda } as const;
      return [
        [averageRunLength(chart, L, shift, 'exact'), arl.ARL_time_varying_limits],
        [averageRunLength(chart, L, shift, 'final'), arl.ARL_zero_state_fixed_limits],
      ] as const;
    });
    expect(pairs).toHaveLength(2 * 80);
    expect(furthest(pairs)).toBeLessThan(0.005);
  });

  it('CUSUM, one and two sides', () => {
    const pairs = reference.cusum.flatMap(({ k, h, shift, ...arl }) => [
      [averageRunLength({ kind: 'cusum', sides: 'upper', k }, h, shift), arl.ARL_one_sided_upper] as const,
      [averageRunLength({ kind: 'cusum', sides: 'both', k }, h, shift), arl.ARL_two_sided] as const,
    ]);
    expect(furthest(pairs)).toBeLessThan(0.005);
  });

  it('at the published thresholds for 100, 370 and 500 readings', () => {
    const lengths = [
      ['ARL100', 100],
      ['ARL370', 370.4],
      ['ARL500', 500],
    ] as const;
    const pairs = lengths.flatMap(([name, length]) => [
      ...reference.crit.ewma_L_for_ARL0.map(
        (row) =>
          [
            averageRunLength({ kind: 'ewma', sides: 'both', lambda: row.lambda }, row[name], 0, 'final'),
            length,
          ] as const,
      ),
      ...reference.crit.cusum_h_for_ARL0.map(
        (row) => [averageRunLength({ kind: 'cusum', sides: 'both', k: row.k }, row[name]), length] as const,
      ),
    ]);
    expect(furthest(pairs)).toBeLessThan(0.005);
  });

  it('individuals at 3 standard deviations', () => {
    const chart = { kind: 'individuals', sides: 'both' } as const;
    expect(averageRunLength(chart, 3)).toBeCloseTo(reference.shewhart_3sigma.ARL0, 6);
    expect(averageRunLength(chart, 3, 1)).toBeCloseTo(reference.shewhart_3sigma.ARL1, 6);
  });
});

test('expected signals in a long history approach one a run length', () => {
  const chart = { kind: 'cusum', sides: 'upper', k: 0.5 } as const;
  const sums = expectedSignals(chart, 3, 4000);
  const rate = ((sums.at(-1) ?? 0) - (sums[1999] ?? 0)) / 2000;
  expect(rate * averageRunLength(chart, 3)).toBeCloseTo(1, 6);
});

test('the windows of run rules have their exact chances at their first reading', () => {
  const { window_prob: exact } = chartReference<{ window_prob: Record<string, number> }>('rules');
  expect(expectedPatterns('oneBeyond3', 1)[0]).toBeCloseTo(exact.N1_beyond3 as number, 12);
  expect(expectedPatterns('nineOnOneSide', 9)[8]).toBeCloseTo(exact.N2_9same as number, 10);
  expect(expectedPatterns('sixInTrend', 6)[5]).toBeCloseTo(exact.N3_6trend as number, 8);
  expect(expectedPatterns('fourteenAlternating', 14)[13]).toBeCloseTo(exact.N4_14alternating as number, 8);
  expect(expectedPatterns('fifteenWithin1', 15)[14]).toBeCloseTo(exact.N7_15within1 as number, 10);
  expect(expectedPatterns('eightOutside1', 8)[7]).toBeCloseTo(exact.N8_8_outside1_bothsides as number, 10);
});

test('thresholds cost the budget whatever the histories, and a larger budget has lower thresholds', () => {
  const histories = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 5, maxLength: 60 });
  fc.assert(
    fc.property(histories, fc.integer({ min: 1, max: 10 }), (lengths, tenths) => {
      const budget = tenths / 10;
      const chart = { kind: 'ewma', sides: 'both', lambda: 0.2 } as const;
      const line = { chart, histories: lengths };
      const found = thresholdForBudget(line, 10, budget);
      const expected = expectedSignals(chart, found.threshold, 30);
      const sum = lengths.reduce((total, n) => total + (expected[n - 1] as number), 0) / 10;
      if (found.met) expect(sum / budget).toBeCloseTo(1, 3);
      expect(thresholdForBudget(line, 10, budget * 2).threshold).toBeLessThanOrEqual(found.threshold);
      const both = thresholdsForBudget(
        [line, { ...line, chart: { kind: 'individuals', sides: 'both' } }],
        10,
        budget,
      );
      expect(both.reduce((total, one) => total + one.budget_per_year, 0)).toBeCloseTo(budget, 10);
    }),
    { numRuns: 15 },
  );
});
