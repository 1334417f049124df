import { describe, expect, it } from 'vitest';
import { drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { intervalCurve } from '../../../lib/analysis/demand/intervalCurve';
import { intervalWear } from '../../../lib/analysis/demand/intervalWear';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { asOf, hoursPerYear, knownPosterior, madeFit, madePart, madePlanning } from './madePlanning';

/**
 * Two units without spread: 0.20 mm + 0.10 mm per 10,000 h meets 0.45 mm at 25,000 run hours. A new part every second overhaul
 * at 12,000 h, since a third stretch would end at 36,000 h; at every one at 24,000 h; and at 26,000 h each interval passes the limit.
 */
const made = madeFit(
  wearStatistics([
    { unit: 'A', run: 'A run 0', x: 0, y: 0.2 },
    { unit: 'A', run: 'A run 0', x: 2, y: 0.4 },
  ]),
  knownPosterior({ beta: [0.2, 0.1], sdNoise_mm: 1e-9 }),
);
const fit = { ...made, row: { ...made.row, observedRunHours: 20_000 } };

function fleet(prices: { readonly TB?: number | null } = {}) {
  const unit = (name: string, interval_h: number | null, perYear: number | null = hoursPerYear) => ({
    unit: name,
    hoursNow: 10_000,
    nextOverhaulDate: asOf,
    hoursPerYear: perYear,
    interval_h,
    run: 0,
    runStart_h: 0,
  });
  const parts = [
    madePart('TB', {
      unitCost: prices.TB === undefined ? 1_000 : prices.TB,
      perUnit: new Map([['Crane', 2]]),
    }),
    madePart('GS', { series: [], unitCost: 50, perUnit: new Map([['Crane', 3]]) }),
  ];
  const units = [unit('A', 12_000), unit('B', 12_000), unit('C', 7_000, 0), unit('D', null, null)];
  return drawFleet(madePlanning(units, [{ fit, limit_mm: 0.45, byPart: true, part: 'TB' }], parts), {
    draws: 20,
  });
}

describe('interval curve of known wear', () => {
  it('gives chances, overhauls and parts exactly; marks the planned interval and what was never seen', async () => {
    const worn = await intervalWear(fleet(), 0.1, [24_000, 26_000]);
    const overhauls = (interval_h: number) => (2 * hoursPerYear) / interval_h;
    const point = (interval_h: number, chance: number, partsAnOverhaul: number) => ({
      group: 'Crane',
      interval_h,
      planned: interval_h === 12_000,
      extrapolated: interval_h > 20_000,
      chance,
      overhaulsAYear: overhauls(interval_h),
      exceedancesAYear: chance * overhauls(interval_h),
      partsAYear: [
        { part: 'GS', pieces: 3 * overhauls(interval_h) },
        { part: 'TB', pieces: 2 * partsAnOverhaul * overhauls(interval_h) },
      ],
    });
    expect(worn).toEqual([point(12_000, 0, 0.5), point(24_000, 0, 1), point(26_000, 1, 1)]);
  });

  it('costs overhauls, limits passed and parts; nothing without costs or a price', async () => {
    const { planning } = fleet();
    const worn = await intervalWear(fleet(), 0.1, [26_000]);
    const costs = { overhaul: 5_000, exceedance: 100_000, currency: 'EUR' };
    const priced = intervalCurve(worn, planning.parts, costs);
    const aYear = (2 * hoursPerYear) / 26_000;
    // Two TB, three GS, the overhaul and the limit passed, at each overhaul.
    expect(priced.at(-1)?.costAYear).toBeCloseTo(aYear * (2 * 1_000 + 3 * 50 + 5_000 + 100_000), 6);
    const unpriced = [
      intervalCurve(worn, planning.parts, null),
      intervalCurve(worn, planning.parts, { ...costs, currency: 'USD' }),
      intervalCurve(worn, fleet({ TB: null }).planning.parts, costs),
    ];
    for (const curve of unpriced) for (const { costAYear } of curve) expect(costAYear).toBeNull();
  });

  it('lets others have their turn at every interval', async () => {
    const shares: number[] = [];
    await intervalWear(fleet(), 0.1, [8_000, 9_000], async (share) => {
      shares.push(share);
    });
    expect(shares).toEqual([0, 0, 0]);
  });
});
