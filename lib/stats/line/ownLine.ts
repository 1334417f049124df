import studentQuantile from '@stdlib/stats-base-dists-t-quantile';

/** A straight line fitted by ordinary least squares; x in run hours / 10,000 and y in mm, or any other units. */
export interface OwnLine {
  /** Fitted y at x = 0. */
  readonly intercept: number;
  readonly slope: number;
  readonly interceptSe: number;
  readonly slopeSe: number;
  /** Residual standard deviation sqrt(RSS / (n - 2)), in units of y. */
  readonly residualSd: number;
  /** n - 2. */
  readonly degreesOfFreedom: number;
  readonly readings: number;
  readonly distinctX: number;
  readonly meanX: number;
  readonly meanY: number;
  /** Root of the sum of squares of x about its mean. */
  readonly spreadX: number;
}

/** Why there is no line, with counts; reads on after a colon. */
export interface OwnLineRefusal {
  readonly reason: string;
}

/** Fitted value with the limits of its interval, in units of y. */
export interface LineInterval {
  readonly fit: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Straight line by ordinary least squares: slope = Sxy / Sxx and intercept = mean y - slope mean x.
 *
 * Sums are taken about the means, so neither hours of 1e6 nor dates as x lose the slope. Standard errors use
 * RSS / (n - 2): of the slope s / sqrt(Sxx), of the intercept s sqrt(1/n + mean x squared / Sxx).
 * Refuses below 3 readings, at fewer than 2 distinct x, or where a result leaves the range of numbers.
 * Throws if x and y differ in length or are not finite. Draper and Smith 1998, Applied Regression Analysis, chapter 1.
 */
export function ownLine(x: ArrayLike<number>, y: ArrayLike<number>): OwnLine | OwnLineRefusal {
  checkPairs(x, y);
  const readings = x.length;
  const distinctX = new Set(Array.from(x)).size;
  if (readings < 3)
    return { reason: `a straight line needs at least 3 readings in the run, got ${readings}` };
  if (distinctX < 2) {
    return { reason: `a straight line needs readings at 2 or more run hours, got ${readings} at the same` };
  }
  const meanX = mean(x);
  const meanY = mean(y);
  const [aboutX, aboutY] = [Array.from(x, (value) => value - meanX), Array.from(y, (value) => value - meanY)];
  const scale = powerOfTwo(aboutX);
  const scaledX = aboutX.map((dx) => dx / scale);
  const squares = scaledX.reduce((sum, dx) => sum + dx * dx, 0);
  const spreadX = scale * Math.sqrt(squares);
  const slope = scaledX.reduce((sum, dx, k) => sum + dx * (aboutY[k] as number), 0) / squares / scale;
  const degreesOfFreedom = readings - 2;
  const residuals = aboutY.map((dy, k) => dy - slope * (aboutX[k] as number));
  const residualSd = rootOfSquares(residuals) / Math.sqrt(degreesOfFreedom);
  const line: OwnLine = {
    intercept: meanY - slope * meanX,
    slope,
    interceptSe: residualSd * Math.hypot(1 / Math.sqrt(readings), meanX / spreadX),
    slopeSe: residualSd / spreadX,
    residualSd,
    degreesOfFreedom,
    readings,
    distinctX,
    meanX,
    meanY,
    spreadX,
  };
  if (Object.values(line).every(Number.isFinite)) return line;
  return { reason: `the numbers of the ${readings} readings are too large or too close for a straight line` };
}

/**
 * Two-sided interval of a fitted line at x, by Student's t with n - 2 degrees of freedom.
 *
 * Half width t s sqrt(1/n + (x - mean x) squared / Sxx) for the line itself ('confidence'), with 1 more under the
 * root for one further reading ('prediction'). Level is the probability inside, such as 0.8.
 * Throws if the level is not between 0 and 1, or where a result leaves the range of numbers.
 */
export function lineInterval(
  line: OwnLine,
  x: number,
  level: number,
  kind: 'prediction' | 'confidence',
): LineInterval {
  if (!(level > 0 && level < 1))
    throw new Error(`lineInterval requires a level between 0 and 1, got ${level}`);
  const t = -studentQuantile((1 - level) / 2, line.degreesOfFreedom);
  const distance = (x - line.meanX) / line.spreadX;
  const own = kind === 'prediction' ? 1 : 0;
  const half = t * line.residualSd * Math.hypot(own, 1 / Math.sqrt(line.readings), distance);
  const fit = line.meanY + line.slope * (x - line.meanX);
  const interval = { fit, lower: fit - half, upper: fit + half };
  if (Object.values(interval).every(Number.isFinite)) return interval;
  throw new Error(`lineInterval requires an x within the range of numbers, got ${x}`);
}

/** Mean about the first value, which keeps the digits of values that lie close together far from zero. */
function mean(values: ArrayLike<number>): number {
  const first = values[0] as number;
  return (
    first + Array.from(values, (value) => value - first).reduce((sum, part) => sum + part, 0) / values.length
  );
}

/** Root of the sum of squares. */
function rootOfSquares(values: readonly number[]): number {
  const scale = powerOfTwo(values);
  return scale * Math.sqrt(values.reduce((sum, value) => sum + (value / scale) ** 2, 0));
}

/** About the largest size of the values: dividing by it is exact and keeps squares in the range of numbers. */
function powerOfTwo(values: readonly number[]): number {
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return largest > 0 ? 2 ** Math.floor(Math.log2(largest)) : 1;
}

function checkPairs(x: ArrayLike<number>, y: ArrayLike<number>): void {
  if (x.length !== y.length)
    throw new Error(`ownLine requires as many x as y, got ${x.length} and ${y.length}`);
  if (![...Array.from(x), ...Array.from(y)].every(Number.isFinite)) {
    throw new Error('ownLine requires finite x and y, got others');
  }
}
