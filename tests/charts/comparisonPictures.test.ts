import { describe, expect, it, test } from 'vitest';
import { largestGap } from '../../lib/analysis/circle/largestGap';
import type { CircleSet, ClearanceCircles } from '../../lib/analysis/circle/types';
import type { ChartedReading, ChartedSeries } from '../../lib/analysis/drift/types';
import { unitCharts } from '../../lib/analysis/drift/unitCharts';
import type { SisterRow, StartRow } from '../../lib/analysis/sisters/types';
import { circlePicture } from '../../lib/charts/circlePicture';
import { controlPanel } from '../../lib/charts/controlPanel';
import {
  cusumPanel,
  ewmaPanel,
  individualsPanel,
  movingRangePanel,
  readingsPanel,
  workshopPanel,
} from '../../lib/charts/driftPanels';
import { funnelPicture } from '../../lib/charts/funnelPicture';
import { meansPicture } from '../../lib/charts/meansPicture';
import { ratioMeasure, ratioPicture } from '../../lib/charts/ratioPicture';
import { smallMultiples } from '../../lib/charts/smallMultiples';
import { startPicture } from '../../lib/charts/startPicture';
import { clockPositions } from '../../lib/stats/clock/clockPositions';
import { interval } from '../support/interval';
import { theme } from './checkSpec';
import { drawn } from './drawn';

const sister = (unit: string, ratio: number | null, q: number): SisterRow => ({
  unit,
  group: 'Lark',
  series: 'runout',
  readings: 9,
  q,
  rate: {
    ratio: ratio === null ? null : interval(ratio),
    reason: ratio === null ? 'the sisters’ rate may be zero' : null,
    difference_mm_per_10kh: interval((ratio ?? 1) - 1),
    tailProbability: q,
  },
});

describe('units against their sisters', () => {
  it('names those found unlike, and only those', async () => {
    const rows = [sister('L-1', 1.66, 0.001), sister('L-2', 1.02, 0.8)];
    expect(ratioMeasure(rows)).toBe('ratio');
    const svg = await drawn(ratioPicture(rows, 'ratio', 0.1, theme, false));
    expect(svg).toContain('× 1.66, q 0.001');
    expect(svg).not.toContain('× 1.02, q');
    expect(svg).toContain('aria-label="L-2: 1.02 times its sisters');
  });

  it('shows differences where a ratio is missing', async () => {
    const rows = [sister('L-1', null, 0.5), sister('L-2', 1.1, 0.8)];
    expect(ratioMeasure(rows)).toBe('difference');
    expect(await drawn(ratioPicture(rows, 'difference', 0.1, theme, true))).toContain(
      'less that of its sisters',
    );
  });

  it('start levels name those further out than sisters are among themselves', async () => {
    const start = (unit: string, q: number): StartRow => ({
      unit,
      group: 'Lark',
      series: 'runout',
      own_mm: 0.33,
      sd_mm: 0.01,
      difference_mm: 0.13,
      interval_mm: interval(0.13),
      outside: 'none',
      tailProbability: q,
      q,
      readings: 5,
    });
    const svg = await drawn(startPicture([start('L-1', 0.02), start('L-2', 0.9)], 0.1, theme, false));
    expect(svg).toContain('0.130\u00a0mm, q 0.020');
    expect(svg).not.toContain('0.130\u00a0mm, q 0.90<');
    expect(svg).toContain('less that of its sisters');
    await drawn(startPicture([start('L-1', 0.02)], 0.1, theme, true));
  });

  it.each(['rate', 'start'] as const)(
    'funnel of own %s: units outside are named, empty ones draw nothing',
    async (measure) => {
      const unit = (name: string, value: number, outside: 'none' | '95') =>
        ({ unit: name, value, sd: 0.01, readings: 5, runs: 2, score: 0, outside, reason: null }) as const;
      const limits = [0.005, 0.02].map((sd) => ({
        sd,
        lower95: 0.05 - 2 * sd,
        upper95: 0.05 + 2 * sd,
        lower998: 0.05 - 3 * sd,
        upper998: 0.05 + 3 * sd,
      }));
      const units = [
        unit('L-1', 0.09, '95'),
        unit('L-2', 0.05, 'none'),
        { unit: 'L-3', reason: 'one reading' },
      ];
      const svg = await drawn(funnelPicture({ centre: 0.05, units, limits }, measure, theme, false));
      expect(svg).toContain('>L-1<');
      expect(svg).not.toContain('>L-2<');
      await drawn(funnelPicture({ centre: 0, units: [], limits: [] }, measure, theme, true));
    },
  );

  it('means of levels with their limits', async () => {
    const level = {
      level: 'Skerry',
      count: 9,
      mean: 0.6,
      lower: -0.3,
      upper: 0.4,
      outside: 'upper',
    } as const;
    const spec = meansPicture(
      { factor: 'site', compared: 'wear rate', series: 'runout', levels: [level], reason: null },
      theme,
    );
    expect(await drawn(spec)).toContain('mean 0.60 SD of 9, above the limits');
  });
});

const reading = (year: number, stage: 'found' | 'left', z: number | null): ChartedReading => ({
  overhaul: `O-${year}`,
  date: `${year}-05-01`,
  stage,
  unitHours: 0,
  runHours: stage === 'left' ? 0 : 8000,
  workshop: 'Dunlin',
  value_mm: 0.02 + 0.001 * (z ?? 0),
  foretold_mm: z === null ? null : 0.02,
  z,
});
const series = (sides: ChartedSeries['sides'], z: readonly (number | null)[]): ChartedSeries => ({
  unit: 'L-1',
  group: 'Lark',
  series: 'runout',
  sides,
  readings: z.map((one, index) => reading(2012 + (index >> 1), index % 2 === 0 ? 'left' : 'found', one)),
});
const thresholds = (['individuals', 'ewma', 'cusum'] as const).flatMap((chart) =>
  (['both', 'upper'] as const).map((sides) => ({
    chart,
    sides,
    threshold: 3,
    expected_per_year: 1,
    met: true,
  })),
);

describe('charts of drift', () => {
  test.each([
    ['both sides', series('both', [null, 0.3, -0.5, 4, 3.5, 0])],
    ['upper side', series('upper', [0.1, 0.3, -0.5, 4])],
    ['a single reading', series('both', [null])],
    ['all readings equal', series('both', [0, 0, 0, 0])],
    ['no reading', series('both', [])],
  ])('%s', async (_, one) => {
    const charts = unitCharts(one, thresholds, 'found', null);
    for (const panel of [readingsPanel, individualsPanel, ewmaPanel, cusumPanel, movingRangePanel])
      await drawn(controlPanel(panel(charts), theme, false));
    await drawn(smallMultiples([{ series: one, found: true }], 3, theme, true));
    const workshop = {
      workshop: 'Dunlin',
      frames: [],
      readings: one.readings.map((own) => ({ ...own, unit: 'L-1', frame: 'Lark' })),
    };
    await drawn(controlPanel(workshopPanel(workshop), theme, true));
  });

  it('rings what lies beyond the threshold on the side that is watched', () => {
    const outside = (sides: ChartedSeries['sides']) =>
      individualsPanel(unitCharts(series(sides, [0, 4, -4]), thresholds, 'found', null)).points.map(
        (point) => point.outside,
      );
    expect(outside('both')).toEqual([false, true, true]);
    expect(outside('upper')).toEqual([false, true, false]);
  });
});

describe('the clearance circle', () => {
  const set = (
    stage: 'found' | 'left',
    c12: number,
    c3: number,
    c6: number,
    c9: number | null,
  ): CircleSet => {
    const readings = { c12, c3, c6, c9 };
    return {
      overhaul: 'O-1',
      date: '2020-01-01',
      stage,
      readings,
      largestGap_mm: largestGap(readings),
      positions: clockPositions(readings),
      uncertainty: null,
    };
  };
  const circles: ClearanceCircles = {
    characteristic: 'tip_turbine',
    sets: [],
    noise_mm: null,
    noiseFrom: null,
    largest_mm: 1.2,
    smallest_mm: 0.6,
  };

  it('draws what was read, with limits and the change since it was left', async () => {
    const svg = await drawn(
      circlePicture(circles, set('left', 0.9, 0.85, 0.8, 0.85), set('found', 1.1, 1, 0.9, 1), theme, false),
    );
    for (const value of ['1.100', '1.000', '0.900', '0.500']) expect(svg).toContain(`>${value}`);
    for (const limit of ['largest 1.200', 'smallest 0.600']) expect(svg).toContain(`>${limit}`);
    // 1 mm is 0.62 / 1.2 of the casing's radius, which is 400 / 2.6 px of 25.4 / 96 mm.
    expect(svg).toContain('gaps drawn about 21 times their size');
  });

  it('three positions, one position, equal gaps and a negative one draw too', async () => {
    await drawn(circlePicture(circles, null, set('found', 1.1, 1, 0.9, null), theme, true));
    const one = {
      ...set('found', 1, 1, 1, 1),
      readings: { c12: 1, c3: null, c6: null, c9: null },
      positions: null,
    };
    await drawn(circlePicture({ ...circles, largest_mm: null, smallest_mm: null }, null, one, theme, true));
    await drawn(circlePicture(circles, set('left', 1, 1, 1, 1), set('found', 1, 1, 1, 1), theme, false));
    await drawn(circlePicture(circles, null, set('found', -0.1, 0.2, 0.3, 0.1), theme, false));
  });
});
