import { describe, expect, it } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { fitWear } from '../../../lib/stats/wear/fitWear';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { denseFit, type Ratios } from './denseModel';
import { readFleet, readReference } from './readFleet';

/** Source: R 4.2.2, lme4 1.1-31, REML; see tests/reference/README.md. */
interface WearReference {
  readonly lme4: {
    readonly sd: Readonly<Record<string, number>>;
    readonly beta: readonly [number, number];
    readonly se: readonly [number, number];
    readonly reml_criterion: number;
  };
}
interface LmmReference {
  readonly fixef: { readonly int: number; readonly slope: number };
  readonly se: { readonly int: number; readonly slope: number };
  readonly var_components: {
    readonly sd: { readonly int: number; readonly slope: number };
    readonly residual_sd: number;
  };
  readonly REMLcrit: number;
}

/** Tolerances: SDs 1e-4 relative, 1e-6 absolute at a boundary; the rest 1e-6 relative. */
function expectSd(actual: number, reference: number) {
  if (reference < 1e-6) expect(actual).toBeLessThan(1e-6);
  else expect(Math.abs(actual / reference - 1)).toBeLessThan(1e-4);
}

function expectRelative(actual: number, reference: number) {
  expect(Math.abs(actual / reference - 1)).toBeLessThan(1e-6);
}

describe('fitWear equals lme4 on nested fleets', () => {
  const references = readReference<Record<string, WearReference>>('wear/reference.json');
  const oneRunPerUnit = {
    'unit (Intercept)': 'sdStartUnit_mm',
    'unit.1 x': 'sdSlopeUnit_mm_per_10kh',
  } as const;
  const nested = {
    'run x': 'sdSlopeRun_mm_per_10kh',
    'run.1 (Intercept)': 'sdStartRun_mm',
    'unit x': 'sdSlopeUnit_mm_per_10kh',
    'unit.1 (Intercept)': 'sdStartUnit_mm',
  } as const;

  it.each(Object.entries(references))('%s', (name, { lme4 }) => {
    const fit = fitWear(wearStatistics(readFleet(`wear/${name}.csv`)));
    const names = name === 'sleepstudy' ? oneRunPerUnit : nested;
    for (const [term, field] of Object.entries(names)) expectSd(fit[field], lme4.sd[term] as number);
    expectSd(fit.sdNoise_mm, lme4.sd['Residual '] as number);
    expectRelative(fit.intercept_mm, lme4.beta[0]);
    expectRelative(fit.slope_mm_per_10kh, lme4.beta[1]);
    expectRelative(fit.interceptSe_mm, lme4.se[0]);
    expectRelative(fit.slopeSe_mm_per_10kh, lme4.se[1]);
    expectRelative(fit.remlCriterion, lme4.reml_criterion);
    expect(fit.converged).toBe(true);
  });

  it('names the standard deviations that are at zero', () => {
    const boundaryOf = (name: string) => fitWear(wearStatistics(readFleet(`wear/${name}.csv`))).boundary;
    expect(boundaryOf('nested-40')).toEqual([]);
    expect(boundaryOf('fleet-12')).toEqual(['sdStartUnit']);
    expect(boundaryOf('fleet-6-noisy')).toEqual(['sdSlopeRun']);
    expect(boundaryOf('fleet-10-no-unit-spread')).toEqual(['sdSlopeUnit']);
  });
});

describe('fitWear equals lme4 with one run a unit', () => {
  const references = readReference<Record<string, LmmReference>>('lmm/reference.json');

  it.each(Object.entries(references))('%s', (name, reference) => {
    const fit = fitWear(wearStatistics(readFleet(`lmm/${name}.csv`)));
    expectSd(fit.sdStartUnit_mm, reference.var_components.sd.int);
    expectSd(fit.sdSlopeUnit_mm_per_10kh, reference.var_components.sd.slope);
    expectSd(fit.sdNoise_mm, reference.var_components.residual_sd);
    expectRelative(fit.intercept_mm, reference.fixef.int);
    expectRelative(fit.slope_mm_per_10kh, reference.fixef.slope);
    expectRelative(fit.interceptSe_mm, reference.se.int);
    expectRelative(fit.slopeSe_mm_per_10kh, reference.se.slope);
    expectRelative(fit.remlCriterion, reference.REMLcrit);
    expect([fit.sdStartRun_mm, fit.sdSlopeRun_mm_per_10kh]).toEqual([0, 0]);
    expect(fit.converged).toBe(true);
  });
});

describe('fitWear', () => {
  it('has the criterion of the whole covariance matrix, interval readings included, and its least value', () => {
    const truth = { noise: 0.012, startRun: 0.02, slopeRun: 0.02, startUnit: 0.03, slopeUnit: 0.03 };
    const readings = simulateFleet(8, 8, truth, false).readings.map((reading, k) => ({
      ...reading,
      weight: k % 4 === 0 ? 0.25 : 1,
    }));
    const fit = fitWear(wearStatistics(readings));
    const degrees = readings.length - 2;
    const denseCriterion = (ratios: Ratios) => {
      const { residualSquares, logDeterminants } = denseFit(readings, ratios);
      return degrees * (1 + Math.log((2 * Math.PI * residualSquares) / degrees)) + logDeterminants;
    };
    const { startRun, slopeRun, startUnit, slopeUnit } = fit.ratios;
    const fitted = [startRun, slopeRun, startUnit, slopeUnit] as const;
    expect(fit.remlCriterion).toBeCloseTo(denseCriterion(fitted), 8);
    fitted.forEach((ratio, j) => {
      for (const moved of [0.98 * ratio, 1.02 * ratio + 0.001]) {
        const ratios = fitted.map((other, k) => (k === j ? moved : other)) as unknown as Ratios;
        expect(denseCriterion(ratios)).toBeGreaterThan(fit.remlCriterion - 1e-9);
      }
    });
  });

  it('finds the truth of a large fleet and counts its data', () => {
    const truth = { noise: 0.012, startRun: 0.015, slopeRun: 0.015, startUnit: 0.01, slopeUnit: 0.02 };
    const { readings } = simulateFleet(3, 2000, truth, false);
    const fit = fitWear(wearStatistics(readings));
    expect(fit.slope_mm_per_10kh).toBeCloseTo(0.08, 2);
    expect(fit.sdNoise_mm / truth.noise).toBeCloseTo(1, 1);
    expect(fit.sdStartRun_mm / truth.startRun).toBeCloseTo(1, 1);
    expect(fit.sdSlopeRun_mm_per_10kh / truth.slopeRun).toBeCloseTo(1, 1);
    expect(fit.sdStartUnit_mm / truth.startUnit).toBeCloseTo(1, 1);
    expect(fit.sdSlopeUnit_mm_per_10kh / truth.slopeUnit).toBeCloseTo(1, 1);
    expect([fit.units, fit.readings]).toEqual([2000, readings.length]);
  });

  it('refuses what has no fit, saying what was needed', () => {
    const reading = { unit: 'U1', run: 'U1-1', x: 0, y: 0.2 };
    const fitOf = (readings: (typeof reading)[]) => () => fitWear(wearStatistics(readings));
    expect(fitOf([reading, { ...reading, x: 1 }])).toThrow('fitWear requires at least 3 readings, got 2');
    expect(fitOf([reading, reading, { ...reading, y: 0.3 }])).toThrow('2 distinct run hours');
    expect(fitOf([reading, { ...reading, x: 1 }, { ...reading, x: 2 }])).toThrow(
      'fitWear requires readings that scatter about a line, got 3 on one line',
    );
  });
});
