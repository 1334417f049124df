import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultSparesSettings } from '../../../lib/analysis/demand/defaultSparesSettings';
import { drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { sparesOf } from '../../../lib/analysis/demand/sparesOf';
import { isoDatePlus } from '../../../lib/analysis/isoDate';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { asOf, knownPosterior, type MadeUnit, madeFit, madePart, madePlanning } from './madePlanning';

const statistics = wearStatistics([
  { unit: 'A', run: 'A run 0', x: 0, y: 0.2 },
  { unit: 'A', run: 'A run 0', x: 0.5, y: 0.25 },
]);
const day = (days: number) => isoDatePlus(asOf, days);

/** The unit of knownRate: the part is fitted on day 600, 2027-08-24, and on day 1600, 2030-05-20, and at no other time. */
function known(stock: Parameters<typeof madePart>[1]) {
  const fit = madeFit(statistics, knownPosterior({ beta: [0.2, 0.1], sdNoise_mm: 1e-9 }));
  const unit: MadeUnit = {
    unit: 'A',
    hoursNow: 10_000,
    nextOverhaulDate: day(100),
    run: 0,
    runStart_h: 0,
  };
  const parts = [
    madePart('TB', stock),
    madePart('GS', {
      series: [],
      perUnit: new Map([['Crane', 3]]),
      unitCost: 10,
      currency: 'USD',
      onHand: 99,
    }),
    madePart('XX', { series: [], perUnit: new Map([['Crane', 1]]), unitCost: null, currency: null }),
  ];
  const planning = madePlanning([unit], [{ fit, limit_mm: 0.45, byPart: true, part: 'TB' }], parts);
  return sparesOf(drawFleet(planning, { draws: 40 }));
}

describe('stock if nothing is ordered, of a known demand', () => {
  it('falls in the quarters of the fittings and rises in that of the delivery', () => {
    const { stock } = known({ onHand: 1, onOrder: 2, due: '2028-03-31' });
    const own = stock.filter(({ part }) => part === 'TB');
    expect(own.map(({ date }) => date).slice(0, 3)).toEqual(['2026-03-31', '2026-06-30', '2026-09-30']);
    expect(own.at(-1)?.date).toBe('2031-01-01');
    const changes = own.filter(({ median }, k) => median !== own[k - 1]?.median);
    expect(changes).toEqual([
      { part: 'TB', date: '2026-03-31', median: 1, atServiceLevel: 1 },
      { part: 'TB', date: '2027-09-30', median: 0, atServiceLevel: 0 },
      { part: 'TB', date: '2028-03-31', median: 2, atServiceLevel: 2 },
      { part: 'TB', date: '2030-06-30', median: 1, atServiceLevel: 1 },
    ]);
  });
});

describe('money by year, of a known demand', () => {
  it('is the price in the years of the fittings, the order in the year of its last day, currencies apart', () => {
    const { budget, overhauls } = known({ unitCost: 70 });
    const years = ['2026', '2027', '2028', '2029', '2030', '2031'];
    const of = (currency: string) => budget.filter((row) => row.currency === currency);
    expect([...new Set(budget.map(({ currency }) => currency))]).toEqual(['EUR', 'USD']);
    expect(of('EUR').map(({ year }) => year)).toEqual(years);
    // Ordered on day 530, 2027-06-15.
    expect(of('EUR').map(({ mean, p95, ordered }) => [mean, p95, ordered])).toEqual([
      [0, 0, 0],
      [70, 70, 70],
      [0, 0, 0],
      [0, 0, 0],
      [70, 70, 0],
      [0, 0, 0],
    ]);
    expect(of('USD').reduce((sum, { mean }) => sum + mean, 0)).toBe(3 * 10 * overhauls);
  });

  it('an order whose last day is past counts today', () => {
    const { budget } = known({ unitCost: 70, leadTime_weeks: 100 });
    expect(budget[0]).toMatchObject({ year: '2026', currency: 'EUR', ordered: 70 });
  });
});

describe('stock and money of uncertain demand', () => {
  const fit = madeFit(
    statistics,
    knownPosterior({ beta: [0.2, 0.08], sdNoise_mm: 0.01, ratios: [1, 2, 0.5, 1] }),
  );
  const parts = (onHand: number) => [
    madePart('TB', { onHand, onOrder: 1, due: day(500), unitCost: 70 }),
    madePart('GS', { series: [], perUnit: new Map([['Crane', 2]]), unitCost: 5 }),
  ];
  const fleet = (seed: number, onHand: number) => {
    const units = Array.from({ length: 6 }, (_, k) => ({
      unit: `U${k}`,
      hoursNow: 2_500 * k + 1_000,
      interval_h: 9_000,
      nextOverhaulDate: day(40 + 70 * k),
      run: 0,
      runStart_h: 0,
    }));
    const series = [{ fit, limit_mm: 0.37, byPart: true, part: 'TB' }];
    return drawFleet(madePlanning(units, series, parts(onHand)), { seed, draws: 100 });
  };
  const any = { seed: fc.integer({ min: 1, max: 6 }), onHand: fc.integer({ min: 0, max: 5 }) };

  it('the stock at the service level is negative from the quarter of the day on which the part is short, and not before', () => {
    fc.assert(
      fc.property(any.seed, any.onHand, fc.constantFrom(0.6, 0.9, 0.95), (seed, onHand, serviceLevel) => {
        // Without a lead time no shortage is passed over.
        const drawn = fleet(seed, onHand);
        const bare = {
          ...drawn.planning,
          parts: drawn.planning.parts.map((part) => ({ ...part, leadTime_weeks: 0 })),
        };
        const result = sparesOf({ ...drawn, planning: bare }, { ...defaultSparesSettings, serviceLevel });
        for (const { part, shortOn } of result.orders) {
          const own = result.stock.filter((row) => row.part === part);
          for (const row of own) expect(row.atServiceLevel).toBeLessThanOrEqual(row.median);
          const before = own.filter(({ date }) => shortOn === null || date < shortOn);
          for (const row of before) expect(row.atServiceLevel).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed: 5, numRuns: 20 },
    );
  });

  it('the means of the years add up to the mean demand at its price', () => {
    fc.assert(
      fc.property(any.seed, (seed) => {
        const { budget, orders } = sparesOf(fleet(seed, 0));
        const fitted = budget.reduce((sum, { mean }) => sum + mean, 0);
        const priced = orders.reduce(
          (sum, { part, demandMean }) => sum + demandMean * (part === 'TB' ? 70 : 5),
          0,
        );
        expect(fitted).toBeCloseTo(priced, 6);
        for (const { p10, p50, p90, p95 } of budget)
          expect([p10, p50, p90, p95]).toEqual([p10, p50, p90, p95].sort((a, b) => a - b));
      }),
      { seed: 5, numRuns: 6 },
    );
  });
});
