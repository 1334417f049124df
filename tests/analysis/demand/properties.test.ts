import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionsOf } from '../../../lib/analysis/decisions/decisionsOf';
import { defaultSparesSettings } from '../../../lib/analysis/demand/defaultSparesSettings';
import { type DrawnFleet, drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { intervalCurve } from '../../../lib/analysis/demand/intervalCurve';
import { intervalWear } from '../../../lib/analysis/demand/intervalWear';
import { sparesOf } from '../../../lib/analysis/demand/sparesOf';
import type { Spares, SparesSettings } from '../../../lib/analysis/demand/types';
import { whatIf } from '../../../lib/analysis/demand/whatIf';
import { isoDatePlus } from '../../../lib/analysis/isoDate';
import { noChanges } from '../../../lib/analysis/plan/comingOverhauls';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { asOf, type MadeUnit, madeFit, madePart, madePlanning } from './madePlanning';

const truth = { noise: 0.012, startRun: 0.01, slopeRun: 0.012, startUnit: 0.01, slopeUnit: 0.02 };

/** A fleet of six units with a part-reset and an assembly-reset series, a consumable and stock. */
function fleetOf(seed: number, draws = 200): DrawnFleet {
  const { readings, current } = simulateFleet(seed, 6, truth);
  const statistics = wearStatistics(
    readings.map((one) => ({ ...one, run: String(Number(one.run.split('-')[1]) - 1) })),
  );
  const posterior = integrateWear(statistics);
  const units = current.map(({ unit, run, lastX }, k): MadeUnit => {
    const hoursNow = 20_000 + lastX * 10_000 + 500 * k;
    const nextOverhaulDate = isoDatePlus(asOf, 30 + 61 * k);
    return {
      unit,
      hoursNow,
      interval_h: 10_000,
      nextOverhaulDate,
      run: Number(run.split('-')[1]) - 1,
      runStart_h: 20_000,
    };
  });
  const series = [
    { fit: madeFit(statistics, posterior), limit_mm: 0.45, byPart: true, part: 'TB' },
    { fit: madeFit(statistics, posterior, 'runout'), limit_mm: 0.42, byPart: false, part: 'RS' },
  ];
  const parts = [
    madePart('TB', { onHand: 1 }),
    madePart('RS', { series: ['runout'], unitCost: 500, currency: 'USD' }),
    madePart('GS', { series: [], perUnit: new Map([['Crane', 2]]), onHand: 3 }),
  ];
  return drawFleet(madePlanning(units, series, parts), { seed, draws });
}

const fleets = new Map<number, DrawnFleet>();
const fleet = (seed: number) => {
  const made = fleets.get(seed) ?? fleetOf(seed);
  fleets.set(seed, made);
  return made;
};
const spares = (seed: number, change: Partial<SparesSettings> = {}) =>
  sparesOf(fleet(seed), { ...defaultSparesSettings, ...change });
const totalOf = (result: Spares, part: string) =>
  result.orders.find((order) => order.part === part)?.demandMean ?? Number.NaN;
const seeds = fc.integer({ min: 1, max: 8 });
const check = <T>(property: fc.IRawProperty<T>) => fc.assert(property, { seed: 4, numRuns: 30 });

describe('demand', () => {
  it('of a part-reset series never rises with the accepted risk', () => {
    check(
      fc.property(seeds, fc.integer({ min: 1, max: 45 }), fc.integer({ min: 1, max: 45 }), (seed, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((percent) =>
          totalOf(spares(seed, { acceptedRisk: percent / 100 }), 'TB'),
        );
        expect(high as number).toBeLessThanOrEqual((low as number) + 1e-9);
      }),
    );
  });

  it('of consumables is pieces times overhauls, whatever the risk', () => {
    check(
      fc.property(seeds, fc.integer({ min: 1, max: 45 }), (seed, percent) => {
        const result = spares(seed, { acceptedRisk: percent / 100 });
        const demand = result.demand.filter(({ part }) => part === 'GS');
        expect(demand.reduce((sum, { mean }) => sum + mean, 0)).toBeCloseTo(2 * result.overhauls, 9);
        for (const { mean, p10, p95 } of demand) expect([p10, p95]).toEqual([mean, mean]);
      }),
    );
  });

  it('has ordered quantiles, chances that fall with k and sum to the mean, and quarters that sum to the total', () => {
    check(
      fc.property(seeds, (seed) => {
        const result = spares(seed);
        for (const { mean, p10, p50, p90, p95, chanceOfAtLeast } of result.demand) {
          expect([p10, p50, p90, p95]).toEqual([p10, p50, p90, p95].sort((a, b) => a - b));
          expect(chanceOfAtLeast).toEqual([...chanceOfAtLeast].sort((a, b) => b - a));
          expect(chanceOfAtLeast.slice(1).reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(mean, 9);
        }
        for (const part of ['TB', 'RS', 'GS']) {
          const quarters = result.demand.filter((row) => row.part === part);
          expect(quarters.reduce((sum, { mean }) => sum + mean, 0)).toBeCloseTo(totalOf(result, part), 9);
        }
      }),
    );
  });
});

describe('orders', () => {
  it('a higher service level never orders later or less, more stock never earlier', () => {
    check(
      fc.property(seeds, fc.constantFrom('TB', 'RS', 'GS'), (seed, part) => {
        const at = (serviceLevel: number) =>
          spares(seed, { serviceLevel }).orders.find((order) => order.part === part);
        const [low, high] = [at(0.8), at(0.98)];
        if (low?.shortOn != null) expect((high?.shortOn ?? '9999') <= low.shortOn).toBe(true);
        if (low?.shortOn != null && low.shortOn === high?.shortOn)
          expect(high.quantity).toBeGreaterThanOrEqual(low.quantity);
      }),
    );
  });

  it('a longer lead time moves the last order day and not the day on which stock is short', () => {
    const [present, longer] = [spares(2), spares(2, { leadTimeFactor: 1.5 })];
    present.orders.forEach((order, k) => {
      const other = longer.orders[k];
      if (order.shortOn === null) return;
      expect(other?.shortOn).toBe(order.shortOn);
      expect(other?.orderBy).toBe(isoDatePlus(order.orderBy as string, -35));
    });
  });

  it('never adds up currencies', () => {
    const { totals, orders } = spares(1);
    expect(totals.map(({ currency }) => currency)).toEqual(['EUR', 'USD']);
    for (const { currency, cost } of totals) {
      const own = orders.filter((order) => order.currency === currency);
      expect(cost).toBe(own.reduce((sum, order) => sum + (order.cost ?? 0), 0));
    }
  });
});

describe('seeds and changes', () => {
  it('the same seed gives the same answer, another seed another', () => {
    const result = sparesOf(fleetOf(3));
    expect(sparesOf(fleetOf(3))).toEqual(result);
    expect(sparesOf(drawFleet(fleet(3).planning, { seed: 99, draws: 200 })).demand).not.toEqual(
      result.demand,
    );
  });

  it('no change makes no difference', () => {
    const present = spares(1);
    const same = whatIf(fleet(1), present, { changes: noChanges });
    expect(same.parts).toEqual([]);
    expect(same.changed).toEqual(present);
  });

  it('a change is the difference between the two plans computed alone', () => {
    const change = { acceptedRisk: 0.3, changes: { ...noChanges, intervalFactor: 1.3 } };
    const difference = whatIf(fleet(1), spares(1), change);
    const alone = spares(1, change);
    expect(difference.changed).toEqual(alone);
    expect(difference.overhauls).toEqual({ present: spares(1).overhauls, changed: alone.overhauls });
    const part = difference.parts.find((one) => one.part === 'TB');
    expect(part?.demandMean).toEqual({ present: totalOf(spares(1), 'TB'), changed: totalOf(alone, 'TB') });
  });

  it('longer intervals mean fewer overhauls and no smaller chance of an exceedance in each', async () => {
    const worn = await intervalWear(fleet(1), 0.1, [8_000, 12_000, 16_000, 24_000]);
    const curve = intervalCurve(worn, fleet(1).planning.parts, {
      overhaul: 1_000,
      exceedance: 0,
      currency: 'EUR',
    }).filter(({ planned }) => !planned);
    // The plan's own interval stands among them.
    expect(worn.filter(({ planned }) => planned).map(({ interval_h }) => interval_h)).toEqual([10_000]);
    expect(curve).toHaveLength(4);
    curve.slice(1).forEach((point, k) => {
      const before = curve[k];
      if (before === undefined) throw new Error('no point before');
      expect(point.overhaulsAYear * point.interval_h).toBeCloseTo(
        before.overhaulsAYear * before.interval_h,
        6,
      );
      expect(point.chance).toBeGreaterThanOrEqual(before.chance - 0.01);
    });
    expect(curve[3]?.chance).toBeGreaterThan(0.2);
    // RS has a price in USD only, so no cost in EUR can be told once it is fitted.
    expect(curve[3]?.costAYear).toBeNull();
  });

  it.each([
    [{ acceptedRisk: 0 }, 'accepted risk inside 0 to 1, got 0'],
    [{ serviceLevel: 1 }, 'service level inside 0 to 1, got 1'],
    [{ horizonYears: 0 }, 'up to 30 years, got 0'],
    [{ leadTimeFactor: -1 }, 'no negative time'],
  ])('refuses %j', (change, text) => {
    expect(() => spares(1, change)).toThrow(text);
  });
});

describe('decisions', () => {
  it('raising the accepted risk never asks for more: actions get no weightier, days no earlier', () => {
    check(
      fc.property(seeds, fc.integer({ min: 2, max: 20 }), (seed, percent) => {
        const first = (acceptedRisk: number) =>
          decisionsOf(fleet(seed).planning, { acceptedRisk, horizonMonths: 24 }).filter(
            ({ overhaul }) => overhaul === 1,
          );
        const [low, high] = [first(percent / 100), first((percent + 10) / 100)];
        low.forEach((decision, k) => {
          const other = high[k];
          expect([other?.unit, other?.chanceRunningOn]).toEqual([decision.unit, decision.chanceRunningOn]);
          if (other?.action === 'bring forward') {
            expect(['bring forward', 'measure again']).toContain(decision.action);
            if (decision.action === 'bring forward')
              expect((other.bringForwardTo ?? '') >= (decision.bringForwardTo ?? '')).toBe(true);
          }
          if (other?.action === 'fit new part') expect(decision.action).not.toBe('run on');
        });
      }),
    );
  });
});
