import type { WearReading } from '../../../lib/stats/wear/types';
import * as whole from './wholeCovariance';

/** Ratios SD / noise SD: start run, slope run, start unit, slope unit. */
export type Ratios = readonly [number, number, number, number];

/** The wear model at given ratios with its whole covariance matrix; variances in units of s2. */
export interface DenseModel
  extends Pick<whole.DenseFit, 'beta' | 'inverse' | 'residualSquares' | 'logDeterminants'> {
  /** Start and slope of a run given all readings; a unit or run without readings is a new one. */
  readonly line: (
    unit: string,
    run: string,
  ) => { readonly mean: readonly number[]; readonly covariance: whole.Matrix };
  /** Variance of a unit's own part of the slope given all readings. */
  readonly departure: (unit: string) => number;
}

/** Fits the wear model by generalised least squares, as the textbook conditional normal states it. */
export function denseFit(readings: readonly WearReading[], ratios: Ratios): DenseModel {
  const [startRun, slopeRun, startUnit, slopeUnit] = ratios;
  const v = whole.denseCovariance(readings, { startRun, slopeRun, startUnit, slopeUnit });
  const design = readings.map(({ x }) => [1, x]);
  const y = readings.map((reading) => reading.y);
  const fit = whole.denseFit(v, design, y);
  const { beta, inverse, projection, vInverse } = fit;
  const py = projection.map((row) => whole.dot(row, y));
  const line = (unit: string, run: string) => {
    // Covariances of the run's start and slope departures with every reading.
    const shared = readings.map((reading) => ({
      x: reading.x,
      unit: Number(reading.unit === unit),
      run: Number(reading.unit === unit && reading.run === run),
    }));
    const withReadings = [
      shared.map((same) => same.unit * startUnit ** 2 + same.run * startRun ** 2),
      shared.map((same) => same.x * (same.unit * slopeUnit ** 2 + same.run * slopeRun ** 2)),
    ];
    const prior = [startUnit ** 2 + startRun ** 2, slopeUnit ** 2 + slopeRun ** 2];
    const carried = whole.product(withReadings, vInverse);
    const onBeta = whole
      .product(carried, design)
      .map((row, i) => row.map((value, j) => Number(i === j) - value));
    const fromBeta = whole.product(whole.product(onBeta, inverse), whole.transposed(onBeta));
    const explained = whole.product(carried, whole.transposed(withReadings));
    return {
      mean: beta.map((value, i) => value + whole.dot(withReadings[i] as readonly number[], py)),
      covariance: fromBeta.map((row, i) =>
        row.map((value, j) => (i === j ? (prior[i] as number) : 0) - (explained[i]?.[j] as number) + value),
      ),
    };
  };
  const departure = (unit: string) => {
    const own = readings.map((reading) => (reading.unit === unit ? slopeUnit ** 2 * reading.x : 0));
    return (
      slopeUnit ** 2 -
      whole.dot(
        own,
        projection.map((row) => whole.dot(row, own)),
      )
    );
  };
  return { ...fit, line, departure };
}
