import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import studentQuantile from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, it } from 'vitest';
import { rateRatio, shortRateRatio } from '../../../lib/stats/sisters/rateRatio';
import { studentTable } from '../../../lib/stats/wear/studentTable';
import type { LineMixture } from '../../../lib/stats/wear/types';

/** One component: means and SDs of the unit's and the group's rate, and their correlation. */
interface Component {
  readonly weight: number;
  readonly unit: readonly [mean: number, sd: number];
  readonly group: readonly [mean: number, sd: number];
  readonly correlation: number;
}

const degreesOfFreedom = 9;
const known: readonly Component[] = [
  { weight: 0.2, unit: [0.09, 0.02], group: [0.08, 0.006], correlation: 0.2 },
  { weight: 0.5, unit: [0.12, 0.015], group: [0.081, 0.008], correlation: 0.35 },
  { weight: 0.3, unit: [0.14, 0.03], group: [0.079, 0.01], correlation: -0.1 },
];
/** The group's rate is on the other side of zero with a chance of 0.4 %. */
const uncertain = known.map((one) => ({ ...one, group: [0.08, 0.024] as const }));
const falling = known.map(({ unit, group, ...rest }) => ({
  ...rest,
  unit: [-unit[0], unit[1]] as const,
  group: [-group[0], group[1]] as const,
}));

function mixtureOf(components: readonly Component[]): LineMixture {
  const column = (of: (one: Component) => number) => Float64Array.from(components, of);
  return {
    weight: column(({ weight }) => weight),
    start: column(({ unit }) => unit[0]),
    slope: column(({ group }) => group[0]),
    startStart: column(({ unit }) => unit[1] ** 2),
    startSlope: column(({ unit, group, correlation }) => correlation * unit[1] * group[1]),
    slopeSlope: column(({ group }) => group[1] ** 2),
    s2: column(() => 1),
    table: studentTable(degreesOfFreedom),
  };
}

const points = 2000;
const quantiles = Array.from({ length: points }, (_, k) =>
  studentQuantile((k + 0.5) / points, degreesOfFreedom),
);

/**
 * Chance of something about both rates, by summing over 2000 equally likely group rates the chance of the unit's rate
 * given the group's: of a bivariate t, a t with one more degree of freedom.
 */
function chance(
  components: readonly Component[],
  of: (groupRate: number, unitBelow: (rate: number) => number) => number,
): number {
  return components.reduce((total, { weight, unit, group, correlation }) => {
    const sum = quantiles.reduce((inner, t) => {
      const given = unit[0] + correlation * unit[1] * t;
      const scale =
        unit[1] * Math.sqrt(((1 - correlation ** 2) * (degreesOfFreedom + t * t)) / (degreesOfFreedom + 1));
      const below = (rate: number) => studentCdf((rate - given) / scale, degreesOfFreedom + 1);
      return inner + of(group[0] + group[1] * t, below);
    }, 0);
    return total + (weight * sum) / points;
  }, 0);
}

const ratioBelow = (components: readonly Component[], ratio: number) =>
  chance(components, (rate, below) => (rate > 0 ? below(ratio * rate) : 1 - below(ratio * rate)));

const bounds = [
  ['lower95', 0.025],
  ['lower80', 0.1],
  ['median', 0.5],
  ['upper80', 0.9],
  ['upper95', 0.975],
] as const;

describe('rateRatio against numerical integration over both rates', () => {
  it.each([
    ['known', known, 2e-4],
    ['falling', falling, 2e-4],
    ['uncertain', uncertain, 0.005],
  ] as const)('every bound of a group rate that is %s has its chance', (_, components, within) => {
    const { ratio, reason } = rateRatio(mixtureOf(components));
    expect(reason).toBeNull();
    for (const [bound, below] of bounds)
      expect(Math.abs(ratioBelow(components, ratio?.[bound] ?? Number.NaN) - below), bound).toBeLessThan(
        within,
      );
  });

  it('so has every bound of the difference, and the tail probability is that of no difference', () => {
    const { difference_mm_per_10kh: difference, tailProbability } = rateRatio(mixtureOf(known));
    for (const [bound, below] of bounds) {
      const found = chance(known, (rate, unitBelow) => unitBelow(rate + difference[bound]));
      expect(Math.abs(found - below), bound).toBeLessThan(2e-4);
    }
    const slower = chance(known, (rate, unitBelow) => unitBelow(rate));
    expect(slower).toBeLessThan(0.2);
    expect(Math.abs(tailProbability - 2 * slower)).toBeLessThan(4e-4);
  });

  it('a falling series has the ratio of its mirror image', () => {
    const [one, mirrored] = [rateRatio(mixtureOf(known)), rateRatio(mixtureOf(falling))];
    for (const [bound] of bounds)
      expect(mirrored.ratio?.[bound]).toBeCloseTo(one.ratio?.[bound] ?? Number.NaN, 7);
    expect(mirrored.tailProbability).toBeCloseTo(one.tailProbability, 12);
  });

  it('no ratio where the group may not wear at all, with the chance of it', () => {
    const still = known.map((one) => ({ ...one, group: [0.02, 0.015] as const }));
    const { ratio, reason, tailProbability } = rateRatio(mixtureOf(still));
    const otherSide = chance(still, (rate) => (rate < 0 ? 1 : 0));
    expect(ratio).toBeNull();
    expect(reason).toContain(`chance ${(100 * otherSide).toFixed(1)} %`);
    expect(tailProbability).toBeGreaterThan(0);
  });
});

it('the short form holds the same numbers', () => {
  for (const components of [known, uncertain, falling]) {
    const { ratio, tailProbability } = rateRatio(mixtureOf(components));
    const short = shortRateRatio(mixtureOf(components));
    expect(short.tailProbability).toBe(tailProbability);
    expect(short.ratio === null).toBe(ratio === null);
    if (ratio !== null) expect(ratio).toMatchObject({ ...short.ratio });
  }
});
