import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { describe, expect, it } from 'vitest';
import { defaultSparesSettings } from '../../../lib/analysis/demand/defaultSparesSettings';
import { drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { sparesOf } from '../../../lib/analysis/demand/sparesOf';
import type { DemandRow } from '../../../lib/analysis/demand/types';
import { isoDatePlus } from '../../../lib/analysis/isoDate';
import {
  chanceAtLeast,
  countQuantile,
  poissonBinomial,
} from '../../../lib/stats/poissonBinomial/poissonBinomial';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { asOf, knownPosterior, type MadeUnit, madeFit, madePart, madePlanning } from './madePlanning';

/**
 * Twelve units without anything in common that is uncertain: fixed effects known, starts and rates of units and runs normal about
 * them. All are opened once within the horizon, on the same day, at run hours of their own.
 */
const noise = 0.01;
const ratios = [1, 2, 0.5, 1] as const;
const [startSquare, slopeSquare] = [noise ** 2 * (1 + 0.25), noise ** 2 * (4 + 1)];
/** So that some units surely call for the part and others surely do not. */
const limits_mm = { assembly: 0.25, part: 0.37 };
const draws = 20_000;
const interval_h = 12_000;
const posterior = knownPosterior({ beta: [0.2, 0.08], sdNoise_mm: noise, ratios });
const units = Array.from({ length: 12 }, (_, k): MadeUnit => {
  const hoursNow = 1_000 * k + 200;
  return {
    unit: `U${k}`,
    hoursNow,
    interval_h,
    nextOverhaulDate: isoDatePlus(asOf, 50),
    run: 0,
    runStart_h: 0,
  };
});
// The units of the statistics are others: nothing has been read of those planned for.
const statistics = wearStatistics([
  { unit: 'other', run: 'other run 0', x: 0, y: 0.2 },
  { unit: 'other', run: 'other run 0', x: 1, y: 0.28 },
]);
const runHoursAt = (unit: MadeUnit) => ((unit.hoursNow as number) + 50 * 24) / 10_000;

/** Level at x: variance, and covariance with that at another x. */
const levelCovariance = (x: number, other: number) => startSquare + x * other * slopeSquare;
const levelMean = (x: number) => 0.2 + 0.08 * x;

/** Assembly-reset: found past the limit. */
function chancePastLimit(unit: MadeUnit): number {
  const x = runHoursAt(unit);
  return 1 - normalCdf(limits_mm.assembly, levelMean(x), Math.sqrt(levelCovariance(x, x)));
}

/** Part-reset: after a reading at x the chance of being past the limit at x + interval exceeds 10 %. */
function chanceOfCall(unit: MadeUnit): number {
  const x = runHoursAt(unit);
  const next = x + interval_h / 10_000;
  const gain = levelCovariance(x, next) / (levelCovariance(x, x) + noise ** 2);
  const moved = gain * Math.sqrt(levelCovariance(x, x) + noise ** 2);
  const left = Math.sqrt(levelCovariance(next, next) - gain * levelCovariance(x, next));
  const least = limits_mm.part - normalQuantile(0.9, 0, 1) * left;
  return 1 - normalCdf((least - levelMean(next)) / moved, 0, 1);
}

function firstQuarter(byPart: boolean, pieces: number): DemandRow {
  const fit = madeFit(statistics, posterior);
  const limit_mm = byPart ? limits_mm.part : limits_mm.assembly;
  const part = madePart('TB', { perUnit: new Map([['Crane', pieces]]) });
  const planning = madePlanning(units, [{ fit, limit_mm, byPart, part: 'TB' }], [part]);
  const row = sparesOf(drawFleet(planning, { draws }), defaultSparesSettings).demand[0];
  if (row === undefined) throw new Error('no demand');
  return row;
}

describe.each([
  ['found past the limit, one piece a unit', false, 1, chancePastLimit],
  ['called for by the chance after a reading, one piece a unit', true, 1, chanceOfCall],
  ['called for by the chance after a reading, two pieces a unit', true, 2, chanceOfCall],
] as const)('demand of independent units is their exact convolution: %s', (_, byPart, pieces, chanceOf) => {
  const chances = units.map(chanceOf);
  const exact = poissonBinomial(chances.map((chance) => ({ chance, pieces })));
  const row = firstQuarter(byPart, pieces);

  it('is put to the test by chances from under 20 % to over 80 %', () => {
    expect(Math.min(...chances)).toBeLessThan(0.2);
    expect(Math.max(...chances)).toBeGreaterThan(0.8);
  });

  it('every chance of at least k pieces, within 4 standard errors of the draws', () => {
    expect(row.quarter).toBe('2026-Q1');
    for (let k = 1; k < exact.length; k++) {
      const chance = chanceAtLeast(exact, k);
      const error = Math.sqrt((chance * (1 - chance)) / draws);
      expect(Math.abs((row.chanceOfAtLeast[k] ?? 0) - chance), `${k}`).toBeLessThan(4 * error + 1e-9);
    }
  });

  it('mean within 4 standard errors, quantiles the same', () => {
    const mean = chances.reduce((sum, p) => sum + pieces * p, 0);
    const sd = pieces * Math.sqrt(chances.reduce((sum, p) => sum + p * (1 - p), 0));
    expect(Math.abs(row.mean - mean)).toBeLessThan((4 * sd) / Math.sqrt(draws));
    for (const [level, value] of [
      [0.1, row.p10],
      [0.5, row.p50],
      [0.9, row.p90],
      [0.95, row.p95],
    ] as const) {
      expect(value, `${level}`).toBe(countQuantile(exact, level));
    }
  });
});
