import { studentTable } from '../../../lib/stats/wear/studentTable';
import type { LineMixture } from '../../../lib/stats/wear/types';

/** The ordinary least squares line of some readings as a mixture of one component: Student t with n - 2. */
export function ownLineMixture(x: readonly number[], y: readonly number[]): LineMixture {
  const n = x.length;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / n;
  const [meanX, meanY] = [mean(x), mean(y)];
  const sxx = x.reduce((sum, value) => sum + (value - meanX) ** 2, 0);
  const sxy = x.reduce((sum, value, k) => sum + (value - meanX) * ((y[k] as number) - meanY), 0);
  const slope = sxy / sxx;
  const start = meanY - slope * meanX;
  const rss = y.reduce((sum, value, k) => sum + (value - start - slope * (x[k] as number)) ** 2, 0);
  const s2 = rss / (n - 2);
  return oneLine({
    start,
    slope,
    startStart: s2 * (1 / n + meanX ** 2 / sxx),
    startSlope: (-s2 * meanX) / sxx,
    slopeSlope: s2 / sxx,
    s2,
    degreesOfFreedom: n - 2,
  });
}

/** A mixture of one component. */
export function oneLine(line: {
  readonly start: number;
  readonly slope: number;
  readonly startStart: number;
  readonly startSlope: number;
  readonly slopeSlope: number;
  readonly s2: number;
  readonly degreesOfFreedom: number;
}): LineMixture {
  return {
    weight: Float64Array.of(1),
    start: Float64Array.of(line.start),
    slope: Float64Array.of(line.slope),
    startStart: Float64Array.of(line.startStart),
    startSlope: Float64Array.of(line.startSlope),
    slopeSlope: Float64Array.of(line.slopeSlope),
    s2: Float64Array.of(line.s2),
    table: studentTable(line.degreesOfFreedom),
  };
}
