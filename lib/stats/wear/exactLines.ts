import { type Blocks, groupBlocks, runBlocks, unitBlocks } from './pooledBlocks';
import type { WearStatistics } from './types';

/** What a start or a wear rate may differ by. */
type Level = 'group' | 'unit' | 'run';

/** What the starts and the rates of lines through all readings differ by. */
interface ExactLines {
  readonly start: Level;
  readonly rate: Level;
}

/** Whether a group can be forecast and its integration both ask: statistics do not change. */
const found = new WeakMap<WearStatistics, ExactLines | null>();

/** Squares below this share of the readings' own are rounding, not scatter. */
const ROUNDING = 1e-12;
const LEVELS: readonly Level[] = ['group', 'unit', 'run'];
const kinds: readonly ExactLines[] = LEVELS.flatMap((start) => LEVELS.map((rate) => ({ start, rate })));
const finest: ExactLines = { start: 'run', rate: 'run' };
const nearlyFinest: readonly ExactLines[] = [
  { start: 'run', rate: 'unit' },
  { start: 'unit', rate: 'run' },
];

/**
 * Finds lines that pass through every reading without scatter, with too many readings to be chance: the noise
 * then cannot be estimated. Returns what the starts and the rates of those lines differ by, or null.
 *
 * All nine kinds are tried: one start, a start a unit, a start a run; rates likewise. With df = readings less
 * parameters and k the number of the two that differ, the posterior weight falls as ratio^(df - 3 - k) towards
 * large ratios where there is no scatter, and has no finite sum from df = 2 + k on: only those kinds count.
 */
export function exactLines(statistics: WearStatistics): ExactLines | null {
  const known = found.get(statistics);
  if (known !== undefined) return known;
  const lines = linesThroughAll(statistics);
  found.set(statistics, lines);
  return lines;
}

function linesThroughAll(statistics: WearStatistics): ExactLines | null {
  const runs = runBlocks(statistics);
  const units = unitBlocks(runs, statistics.firstRun);
  const blocks = { run: runs, unit: units, group: groupBlocks(units) };
  const [n, yy] = [blocks.group.n[0] as number, blocks.group.yy[0] as number];
  const largest = Math.abs(statistics.yCentre) + Math.sqrt(yy);
  const rounding = ROUNDING * yy + n * (4 * Number.EPSILON * largest) ** 2;
  const leftBy = ({ start, rate }: ExactLines) => {
    const finer = LEVELS.indexOf(rate) > LEVELS.indexOf(start);
    const fine = blocks[finer ? rate : start];
    const within = placesWithin(statistics, finer ? rate : start, finer ? start : rate);
    return finer ? ratesWithinStarts(fine, within) : startsWithinRates(fine, within);
  };
  // Lines that differ by less leave no fewer squares: mostly only those that differ by run in both are left to try.
  const scatter = nearlyFinest.every((kind) => leftBy(kind).squares > rounding);
  const fits = (kind: ExactLines) => {
    const differing = Number(kind.start !== 'group') + Number(kind.rate !== 'group');
    const { squares, parameters } = leftBy(kind);
    return statistics.readings - parameters >= 2 + differing && squares <= rounding;
  };
  return (scatter ? [finest] : kinds).find(fits) ?? null;
}

/** First block of a level in each block of the same or a coarser one, and their number at the end. */
function placesWithin({ firstRun, n }: WearStatistics, level: Level, by: Level): Int32Array {
  const units = firstRun.length - 1;
  const size = { run: n.length, unit: units, group: 1 };
  if (level === by) return Int32Array.from({ length: size[level] + 1 }, (_, place) => place);
  return level === 'run' && by === 'unit' ? firstRun : Int32Array.of(0, size[level]);
}

/** A start for every block, a common rate over each stretch of them. */
function startsWithinRates({ n, minX, maxX, xx, xy, yy }: Blocks, first: Int32Array) {
  let [squares, parameters] = [0, n.length];
  for (let stretch = 0; stretch + 1 < first.length; stretch++) {
    let [sxx, sxy, syy, sloped] = [0, 0, 0, false];
    for (let k = first[stretch] as number; k < (first[stretch + 1] as number); k++) {
      sxx += xx[k] as number;
      sxy += xy[k] as number;
      syy += yy[k] as number;
      sloped ||= (maxX[k] as number) > (minX[k] as number);
    }
    sloped &&= sxx > 0;
    squares += Math.max(0, sloped ? syy - (sxy / sxx) * sxy : syy);
    if (sloped) parameters += 1;
  }
  return { squares, parameters };
}

/** A rate for every block, a common start over each stretch of them. */
function ratesWithinStarts({ n, meanX, meanY, xx, xy, yy }: Blocks, first: Int32Array) {
  let [squares, parameters] = [0, 0];
  for (let stretch = 0; stretch + 1 < first.length; stretch++) {
    let [information, score, left] = [0, 0, 0];
    for (let k = first[stretch] as number; k < (first[stretch + 1] as number); k++) {
      const [weight, x, y] = [n[k] as number, meanX[k] as number, meanY[k] as number];
      const sxx = (xx[k] as number) + weight * x * x;
      const sxy = (xy[k] as number) + weight * x * y;
      const syy = (yy[k] as number) + weight * y * y;
      if (sxx > 0) parameters += 1;
      information += sxx > 0 ? (weight * (xx[k] as number)) / sxx : weight;
      score += sxx > 0 ? weight * (y - (x / sxx) * sxy) : weight * y;
      left += sxx > 0 ? syy - (sxy / sxx) * sxy : syy;
    }
    if (information > 0) parameters += 1;
    squares += Math.max(0, information > 0 ? left - (score / information) * score : left);
  }
  return { squares, parameters };
}
