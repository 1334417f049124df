import { describe, expect, it } from 'vitest';
import type { GroupFit } from '../../../lib/analysis/groupFits';
import { sisterGroups } from '../../../lib/analysis/sisters/sisterGroups';
import type { SisterGroup } from '../../../lib/analysis/sisters/types';
import type { FitRow } from '../../../lib/analysis/types';
import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import { fitWear } from '../../../lib/stats/wear/fitWear';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { noForecastReason } from '../../../lib/stats/wear/noForecastReason';
import type { WearReading } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';

/** The comparison of one made-up group. */
function compared(readings: readonly WearReading[]): SisterGroup {
  return sisterGroups([groupFit(readings)])[0] as SisterGroup;
}

function groupFit(readings: readonly WearReading[]): GroupFit {
  const statistics = wearStatistics(readings);
  const reason = noForecastReason(statistics);
  const fit = reason === null ? fitWear(statistics) : null;
  const row = {
    group: 'Lark',
    series: 'thrust_play',
    reason,
    slope_mm_per_10kh: fit?.slope_mm_per_10kh ?? null,
  } as FitRow;
  return {
    row,
    statistics,
    fit,
    posterior: fit === null ? null : integrateWear(statistics),
    unitIndex: new Map(),
  };
}

/** Units with two runs of `count` readings 8,000 h apart; the first unit's rate is multiplied. */
function fleet(units: number, count: number, faster = 1, noise = 0.01): readonly WearReading[] {
  const { normal } = seededDraws(units);
  return Array.from({ length: units }, (_, unit) => {
    const slope = (0.08 + 0.005 * normal()) * (unit === 0 ? faster : 1);
    return Array.from({ length: 2 * count }, (__, index) => {
      const [run, k] = [Math.floor(index / count), index % count];
      const y = 0.2 + slope * 0.8 * k + noise * normal();
      return { unit: `U${unit}`, run: `U${unit} run ${run}`, x: 0.8 * k, y };
    });
  }).flat();
}

/** Every number of a comparison is finite, and every interval holds its median. */
function expectSensible({ rows, startRows, rates, starts }: SisterGroup): void {
  for (const { rate, q } of rows) {
    for (const set of [rate.ratio, rate.difference_mm_per_10kh]) {
      if (set === null) continue;
      const order = [set.lower95, set.lower80, set.median, set.upper80, set.upper95];
      expect(order.every(Number.isFinite)).toBe(true);
      expect(order).toEqual([...order].sort((a, b) => a - b));
    }
    expect(rate.ratio === null).toBe(rate.reason !== null);
    for (const chance of [q, rate.tailProbability]) expect(chance >= 0 && chance <= 1).toBe(true);
  }
  for (const { own_mm, sd_mm, q } of startRows) expect([own_mm, sd_mm, q].every(Number.isFinite)).toBe(true);
  for (const funnel of [rates, starts])
    for (const limit of funnel?.limits ?? []) expect(Object.values(limit).every(Number.isFinite)).toBe(true);
}

describe('sister groups at their edges', () => {
  it('two units: intervals wide enough to hold no finding, or a stated reason; no funnel by their spread', () => {
    const group = compared(fleet(2, 6, 3));
    expect(group.reason).toBeNull();
    expect(group.rows).toHaveLength(2);
    expectSensible(group);
    expect(group.rows.every(({ q }) => q > 0.1)).toBe(true);
    expect([group.rates, group.starts, group.startRows]).toEqual([null, null, []]);
  });

  it('start levels have one q-value for all groups of a series, not one a group', () => {
    const [far, near] = [fleet(8, 4), fleet(9, 4)].map((readings, index) =>
      readings.map((one) => ({
        ...one,
        unit: `${index} ${one.unit}`,
        run: `${index} ${one.run}`,
        y: one.y + (index === 0 && one.unit === 'U3' ? 0.5 : 0),
      })),
    );
    const [alone] = sisterGroups([groupFit(far ?? [])]);
    const [together] = sisterGroups([groupFit(far ?? []), groupFit(near ?? [])]);
    const qOf = (group: SisterGroup | undefined) =>
      group?.startRows.find(({ unit }) => unit === '0 U3')?.q ?? 0;
    // The same smallest tail probability among 17 in place of 8.
    expect(qOf(together) / qOf(alone)).toBeCloseTo(17 / 8, 6);
  });

  it('five hundred units: the one that wears twice as fast is the one found, the furthest', () => {
    const group = compared(fleet(500, 4, 2));
    expectSensible(group);
    const [first] = group.rows.toSorted((a, b) => a.q - b.q);
    expect(first?.unit).toBe('U0');
    // Leaning on the sisters draws the ratio towards them.
    expect(first?.rate.ratio?.median).toBeGreaterThan(1.4);
    expect(first?.q).toBeLessThan(1e-4);
  });

  it('a unit with a single reading is there, leaning on its sisters, and says why the funnel lacks it', () => {
    const group = compared([...fleet(6, 4), { unit: 'new', run: 'new run 0', x: 0.5, y: 0.25 }]);
    expectSensible(group);
    const own = group.rows.find(({ unit }) => unit === 'new');
    expect(own?.readings).toBe(1);
    expect(own?.q).toBeGreaterThan(0.5);
    const inFunnel = group.rates?.units.find(({ unit }) => unit === 'new');
    expect(inFunnel?.reason).toContain('needs 2 readings at different run hours');
  });

  it('all readings equal: no fit is made, and the reason is said', () => {
    const group = compared(fleet(5, 4).map((reading) => ({ ...reading, y: 0.3 })));
    expect(group.reason).toContain('all 40 readings of the group are equal');
    expect([group.rows, group.startRows, group.rates, group.starts]).toEqual([[], [], null, null]);
  });

  it('a series that falls has ratios too; one that does not move has differences in their place', () => {
    const falling = compared(fleet(6, 4, 2).map((reading) => ({ ...reading, y: 1 - reading.y })));
    expectSensible(falling);
    expect(falling.rows.find(({ unit }) => unit === 'U0')?.rate.ratio?.median).toBeGreaterThan(1.3);
    const still = compared(
      fleet(6, 4, 1, 0.05).map((reading) => ({ ...reading, y: reading.y - 0.08 * reading.x })),
    );
    expectSensible(still);
    expect(still.rows.every(({ rate }) => rate.ratio === null && rate.reason !== null)).toBe(true);
  });
});
