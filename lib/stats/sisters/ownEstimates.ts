import type { WearStatistics } from '../wear/types';

/** Spreads that an own value varies by besides the unit's own: mm, slopes mm per 10,000 h. */
export interface OwnSpreads {
  readonly noise: number;
  readonly startRun: number;
  readonly slopeRun: number;
}

/** A value from one unit's readings alone, with its standard deviation for the unit's true value given. */
export interface OwnEstimate {
  readonly value: number;
  readonly sd: number;
  readonly readings: number;
  readonly runs: number;
}

/** Why a unit has no own value. */
export interface NoOwnEstimate {
  readonly reason: string;
}

/**
 * A unit's own wear rate, mm per 10,000 h: ordinary least squares with one slope and a start for every run.
 *
 * Rate = sum of Sxy / sum of Sxx about each run's own means. Its variance for the unit's rate given is
 * s squared / Sxx + sv squared x sum of (share of Sxx in the run) squared; starts of runs do not enter.
 */
export function ownRate(
  statistics: WearStatistics,
  unit: number,
  { noise, slopeRun }: OwnSpreads,
): OwnEstimate | NoOwnEstimate {
  const { runs, readings, sxx, sxy } = sumsOf(statistics, unit);
  if (!(sxx > 0)) {
    return { reason: 'its own wear rate needs 2 readings at different run hours in one run' };
  }
  const shares = runs.reduce((sum, run) => sum + ((statistics.sxxCentred[run] as number) / sxx) ** 2, 0);
  const variance = noise ** 2 / sxx + slopeRun ** 2 * shares;
  return { value: sxy / sxx, sd: Math.sqrt(variance), readings, runs: runs.length };
}

/**
 * A unit's own start level, mm: mean reading less own rate x mean run hours, over all its runs.
 *
 * Its variance for the unit's start and rate given is s squared (1 / n + mean x squared / Sxx), and for each run
 * sa squared (share of readings) squared and sv squared (sum of x / n - mean x x share of Sxx) squared.
 * Readings at 0 run hours need no rate.
 */
export function ownStart(
  statistics: WearStatistics,
  unit: number,
  { noise, startRun, slopeRun }: OwnSpreads,
): OwnEstimate | NoOwnEstimate {
  const { runs, readings, n, sx, sy, sxx, sxy } = sumsOf(statistics, unit);
  const meanX = sx / n;
  if (!(sxx > 0) && meanX !== 0) {
    return {
      reason:
        'its own start level needs a reading at 0 run hours only, or 2 at different run hours in one run',
    };
  }
  const [rate, inverse] = sxx > 0 ? [sxy / sxx, 1 / sxx] : [0, 0];
  const ofRuns = runs.reduce((sum, run) => {
    const start = (statistics.n[run] as number) / n;
    const slope =
      (statistics.sx[run] as number) / n - meanX * (statistics.sxxCentred[run] as number) * inverse;
    return sum + startRun ** 2 * start ** 2 + slopeRun ** 2 * slope ** 2;
  }, 0);
  const variance = noise ** 2 * (1 / n + meanX * meanX * inverse) + ofRuns;
  const value = statistics.yCentre + sy / n - rate * meanX;
  return { value, sd: Math.sqrt(variance), readings, runs: runs.length };
}

function sumsOf(statistics: WearStatistics, unit: number) {
  const first = statistics.firstRun[unit] as number;
  const end = statistics.firstRun[unit + 1] as number;
  const runs = Array.from({ length: end - first }, (_, k) => first + k);
  const sum = (values: Float64Array | Int32Array) =>
    runs.reduce((total, run) => total + (values[run] as number), 0);
  return {
    runs,
    readings: sum(statistics.count),
    n: sum(statistics.n),
    sx: sum(statistics.sx),
    sy: sum(statistics.sy),
    sxx: sum(statistics.sxxCentred),
    sxy: sum(statistics.sxyCentred),
  };
}
