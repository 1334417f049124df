import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import { type Curvature, curvature } from '../../../lib/stats/wear/curvature';
import { type FitChecks, fitCheckSentences, fitChecks } from '../../../lib/stats/wear/fitChecks';
import { fitWear } from '../../../lib/stats/wear/fitWear';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { tangentNodes } from '../../../lib/stats/wear/placeNodes';
import { RATIO_NODE } from '../../../lib/stats/wear/ratioNodes';
import { largestResidualP } from '../../../lib/stats/wear/standardResiduals';
import type { WearReading } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { inRunOrder } from './inRunOrder';
import { readFleet } from './readFleet';
import { denseCovariance, denseFit } from './wholeCovariance';

const truth = { noise: 0.012, startRun: 0.014, slopeRun: 0.01, startUnit: 0.01, slopeUnit: 0.02 };

function checked(readings: readonly WearReading[]) {
  const statistics = wearStatistics(readings);
  const fit = fitWear(statistics);
  const posterior = integrateWear(statistics);
  return {
    fit,
    posterior,
    statistics,
    checks: fitChecks(statistics, fit, posterior, inRunOrder(statistics, readings)),
  };
}

/** Curvature and standardised residuals with V written out. */
function dense(
  readings: readonly WearReading[],
  ratios: Parameters<typeof denseCovariance>[1],
  noise: number,
) {
  const v = denseCovariance(readings, ratios);
  const y = readings.map((reading) => reading.y);
  const straight = denseFit(
    v,
    readings.map(({ x }) => [1, x]),
    y,
  );
  const bent = denseFit(
    v,
    readings.map(({ x }) => [1, x, x * x]),
    y,
  );
  const df = readings.length - 3;
  const se = Math.sqrt((bent.residualSquares / df) * ((bent.inverse[2] as readonly number[])[2] as number));
  const estimate = bent.beta[2] as number;
  return {
    estimate,
    se,
    p: 2 * studentCdf(-Math.abs(estimate / se), df),
    largest: largestOf(straight.standardised, noise),
  };
}

function largestOf(standardised: readonly number[], noise: number): number {
  return Math.max(...standardised.map((value) => Math.abs(value))) / noise;
}

function expectAgreement(readings: readonly WearReading[]): void {
  const { fit, checks } = checked(readings);
  const expected = dense(readings, fit.ratios, fit.sdNoise_mm);
  const { curvature, largest } = checks;
  expect(Math.abs((curvature?.estimate_mm_per_10kh2 as number) - expected.estimate)).toBeLessThan(
    1e-6 * expected.se,
  );
  expect((curvature?.standardError_mm_per_10kh2 as number) / expected.se).toBeCloseTo(1, 7);
  expect(curvature?.p).toBeCloseTo(expected.p, 7);
  expect(curvature?.degreesOfFreedom).toBe(readings.length - 3);
  expect(Math.abs(largest?.standardised as number)).toBeCloseTo(expected.largest, 6);
}

describe('fitChecks', () => {
  it.each(['fleet-12', 'fleet-6-noisy', 'fleet-10-no-unit-spread', 'sleepstudy'])(
    'agrees with generalised least squares on the whole covariance matrix: %s',
    (fleet) => expectAgreement(readFleet(`wear/${fleet}.csv`)),
  );

  it('agrees with it for weighted readings and on simulated fleets', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 3, max: 6 }), (seed, units) => {
        const { readings } = simulateFleet(seed, units, truth, false);
        expectAgreement(readings.map((reading, k) => ({ ...reading, weight: k % 3 === 0 ? 0.4 : 1 })));
      }),
      { seed: 31, numRuns: 12 },
    );
  });

  it('finds the bend put into a fleet, its size and its side, and leaves a straight fleet alone', () => {
    const { readings } = simulateFleet(5, 12, truth, false);
    const { fit, checks: straight } = checked(readings);
    expect(fitCheckSentences(straight)[0]).toMatch(/^No curvature to be seen: the quadratic term is/);
    for (const bend of [0.03, -0.03]) {
      const bent = readings.map((reading) => ({ ...reading, y: reading.y + bend * reading.x ** 2 }));
      // With the ratios held, the estimate is linear in the readings.
      const held = curvature(wearStatistics(bent), fit, inRunOrder(wearStatistics(bent), bent))
        ?.estimate_mm_per_10kh2 as number;
      expect(held - (straight.curvature?.estimate_mm_per_10kh2 as number)).toBeCloseTo(bend, 10);
      const { checks } = checked(bent);
      const found = checks.curvature as Curvature;
      expect(Math.abs(found.estimate_mm_per_10kh2 - bend)).toBeLessThan(2 * found.standardError_mm_per_10kh2);
      expect(found.p).toBeLessThan(1e-4);
      expect(fitCheckSentences(checks)[0]).toMatch(
        bend > 0 ? /bend upward.*too low/ : /bend downward.*too high/,
      );
    }
  });

  it('calls straight fleets bent, and normal noise wild, no more often than it says', () => {
    const found = { curvature: 0, scores: 0, largest: 0 };
    const trials = 150;
    for (let seed = 1; seed <= trials; seed++) {
      const { readings } = simulateFleet(seed, 8, truth);
      const statistics = wearStatistics(readings);
      const { curvature, normalScores, largest } = fitChecks(
        statistics,
        fitWear(statistics),
        integrateWear(wearStatistics(readings.slice(0, 7))),
        inRunOrder(statistics, readings),
      );
      found.curvature += Number((curvature?.p as number) < 0.05);
      found.scores += Number((normalScores?.p as number) < 0.05);
      found.largest += Number((largest?.p as number) < 0.05);
    }
    // 0.05 plus three standard errors of 150 trials.
    for (const count of Object.values(found))
      expect(count / trials).toBeLessThan(0.05 + 3 * Math.sqrt(0.0475 / trials));
    expect(found.curvature).toBeGreaterThan(0);
  });

  it('names the wild reading', () => {
    const { readings } = simulateFleet(7, 10, truth);
    const wild = readings.findIndex(({ x }, k) => k > 20 && x > 0);
    const { checks } = checked(
      readings.map((reading, k) => (k === wild ? { ...reading, y: reading.y + 0.254 } : reading)),
    );
    const { unit, run, x } = readings[wild] as WearReading;
    expect(checks.largest).toMatchObject({ unit, run, x });
    const sentence = fitCheckSentences(checks).find((text) => text.startsWith('One reading stands out'));
    expect(sentence).toContain(
      `unit ${unit}, run ${run}, at ${Math.round(x * 10_000).toLocaleString('en-GB')} h lies 0.`,
    );
    expect(sentence).toContain('above the line of its own run');
  });

  it.each(['fleet-12', 'fleet-6-noisy', 'fleet-10-no-unit-spread'])(
    'gives the share of weight near zero that 29 nodes a ratio show: %s',
    (fleet) => {
      const readings = readFleet(`wear/${fleet}.csv`);
      const { statistics, checks } = checked(readings);
      const { grid } = tangentNodes(wearWorkspace(statistics), 29);
      const meanSquare = readings.reduce((sum, { x }) => sum + (x * x) / readings.length, 0);
      const [startRun, slopeRun, startUnit, slopeUnit] = [0, 1, 2, 3].map((j) =>
        grid.weights.reduce((sum, weight, k) => {
          const ratio = Math.sqrt(
            (grid.ratios[RATIO_NODE * k + j] as number) * (j % 2 === 1 ? meanSquare : 1),
          );
          return sum + weight * (ratio <= 1 / 8 ? 1 : ratio >= 3 / 8 ? 0 : 1.5 - 4 * ratio);
        }, 0),
      );
      const expected = { startRun, slopeRun, startUnit, slopeUnit };
      for (const [name, share] of Object.entries(checks.nearZero)) {
        expect(Math.abs(share - (expected[name as keyof typeof expected] as number)), name).toBeLessThan(
          0.06,
        );
      }
    },
  );

  it('bounds the chance of the largest residual as Student t does', () => {
    // Grubbs' one-sided 5 % point for 10 values of one mean (NIST/SEMATECH 1.3.5.17.1): 2.176 with SD over n - 1.
    const r = 2.176 / Math.sqrt(9 / 10);
    expect(largestResidualP(r, 10, 11) / 2).toBeCloseTo(0.05, 3);
    expect(largestResidualP(100, 10, 11)).toBeLessThan(1e-12);
    expect(largestResidualP(0, 10, 11)).toBe(1);
  });

  it('requires the readings of its statistics', () => {
    const { readings } = simulateFleet(3, 5, truth);
    const { statistics, fit, posterior } = checked(readings);
    expect(() => fitChecks(statistics, fit, posterior, inRunOrder(statistics, readings.slice(1)))).toThrow(
      `fitChecks requires the ${readings.length} readings of its statistics, got ${readings.length - 1}`,
    );
  });
});

describe('fitCheckSentences', () => {
  const well: FitChecks = {
    curvature: {
      estimate_mm_per_10kh2: 0.00213,
      standardError_mm_per_10kh2: 0.0031,
      t: 0.69,
      degreesOfFreedom: 60,
      p: 0.493,
    },
    normalScores: { correlation: 0.9964, p: 0.7 },
    largest: {
      unit: 'U3',
      run: '1',
      x: 1.24,
      residual_mm: 0.02,
      standardised: 2.31,
      p: 1,
    },
    nearZero: { startRun: 0.1, slopeRun: 0.1, startUnit: 0.1, slopeUnit: 0.1 },
    boundary: [],
    oneRunAUnit: false,
    converged: true,
    distinctX: 40,
  };

  it('says little when all is well', () => {
    expect(fitCheckSentences(well)).toEqual([
      'No curvature to be seen: the quadratic term is 0.0021 mm per (10,000 h)² with a standard error of 0.0031 (p = 0.49).',
      'The scatter about the lines looks normal: probability-plot correlation 0.996, largest residual 2.3 standard deviations.',
    ]);
  });

  it('says what there is to say', () => {
    const sentences = fitCheckSentences({
      ...well,
      curvature: null,
      distinctX: 2,
      normalScores: { correlation: 0.91, p: 1e-7 },
      nearZero: { ...well.nearZero, slopeUnit: 0.62, slopeRun: 0.7 },
      boundary: ['sdStartUnit'],
      oneRunAUnit: true,
      converged: false,
    });
    expect(sentences).toEqual([
      'Curvature cannot be tested: the readings lie at 2 different run hours, 3 are needed.',
      'The scatter about the lines is not normal: probability-plot correlation 0.910 (p below 0.0001). Chances far out in the tails are less certain than they look.',
      'Every unit has one run, so that differences between units and between runs cannot be told apart.',
      'The readings do not show that the start values differ from unit to unit: 10 % of the weight lies at a spread near zero. The forecasts allow for the rest.',
      'The readings do not show that the wear rates differ from unit to unit: 62 % of the weight lies at a spread near zero. The forecasts allow for the rest.',
      'The fit did not settle: treat its figures as rough.',
    ]);
  });

  it('doubts between 1 and 5 %', () => {
    const doubt = {
      ...well,
      curvature: { ...(well.curvature as Curvature), p: 0.031 },
    };
    expect(fitCheckSentences(doubt)[0]).toMatch(
      /^The readings may bend upward: .*\(p = 0.031\)\. More readings would tell\.$/,
    );
  });
});
