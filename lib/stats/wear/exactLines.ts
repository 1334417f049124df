import type { WearStatistics } from './types';

/** What a start or a wear rate may differ by. */
type Level = 'group' | 'unit' | 'run';

/** Sums of one run, unit or group about its means; y above yCentre. */
interface Block {
  n: number;
  meanX: number;
  meanY: number;
  xx: number;
  xy: number;
  yy: number;
  minX: number;
  maxX: number;
}

/** Squares below this share of the readings' own are rounding, not scatter. */
const ROUNDING = 1e-12;
const LEVELS: readonly Level[] = ['group', 'unit', 'run'];

/**
 * Finds lines that pass through every reading without scatter, with too many readings to be chance: the noise
 * then cannot be estimated. Returns what the starts and the rates of those lines differ by, or null.
 *
 * All nine kinds are tried: one start, a start a unit, a start a run; rates likewise. With df = readings less
 * parameters and k the number of the two that differ, the posterior weight falls as ratio^(df - 3 - k) towards
 * large ratios where there is no scatter, and has no finite sum from df = 2 + k on: only those kinds count.
 */
export function exactLines(
  statistics: WearStatistics,
): { readonly start: Level; readonly rate: Level } | null {
  const group = pooled(statistics, 'group')[0]?.[0] as Block;
  const largest = Math.abs(statistics.yCentre) + Math.sqrt(group.yy);
  const rounding = ROUNDING * group.yy + group.n * (4 * Number.EPSILON * largest) ** 2;
  for (const start of LEVELS) {
    for (const rate of LEVELS) {
      const differing = Number(start !== 'group') + Number(rate !== 'group');
      const finer = LEVELS.indexOf(rate) > LEVELS.indexOf(start);
      const { squares, parameters } = finer
        ? ratesWithinStarts(statistics, start, rate)
        : startsWithinRates(statistics, start, rate);
      if (statistics.readings - parameters >= 2 + differing && squares <= rounding) return { start, rate };
    }
  }
  return null;
}

/** A start for every block of one level, a common rate over each block of the same or a coarser level. */
function startsWithinRates(statistics: WearStatistics, start: Level, rate: Level) {
  let [squares, parameters] = [0, 0];
  for (const members of pooled(statistics, start, rate)) {
    const [xx, xy, yy] = [sum(members, (m) => m.xx), sum(members, (m) => m.xy), sum(members, (m) => m.yy)];
    const sloped = members.some((member) => member.maxX > member.minX) && xx > 0;
    squares += Math.max(0, sloped ? yy - (xy / xx) * xy : yy);
    parameters += members.length + (sloped ? 1 : 0);
  }
  return { squares, parameters };
}

/** A rate for every block of one level, a common start over each block of a coarser level. */
function ratesWithinStarts(statistics: WearStatistics, start: Level, rate: Level) {
  let [squares, parameters] = [0, 0];
  for (const members of pooled(statistics, rate, start)) {
    let [information, score, left] = [0, 0, 0];
    for (const { n, meanX, meanY, xx, xy, yy } of members) {
      const [sxx, sxy, syy] = [xx + n * meanX * meanX, xy + n * meanX * meanY, yy + n * meanY * meanY];
      if (sxx > 0) parameters += 1;
      information += sxx > 0 ? (n * xx) / sxx : n;
      score += sxx > 0 ? n * (meanY - (meanX / sxx) * sxy) : n * meanY;
      left += sxx > 0 ? syy - (sxy / sxx) * sxy : syy;
    }
    if (information > 0) parameters += 1;
    squares += Math.max(0, information > 0 ? left - (score / information) * score : left);
  }
  return { squares, parameters };
}

/** Blocks of one level, listed by the block of a coarser level (the group unless given) that they belong to. */
function pooled(
  statistics: WearStatistics,
  level: Level,
  by: Level = 'group',
): readonly (readonly Block[])[] {
  const units = statistics.unitNames.map((_, unit) => {
    const first = statistics.firstRun[unit] as number;
    const runs = Array.from({ length: (statistics.firstRun[unit + 1] as number) - first }, (_, k) =>
      runBlock(statistics, first + k),
    );
    return level === 'run' ? runs : [runs.reduce(merge)];
  });
  if (by === 'run') return units.flat().map((block) => [block]);
  if (by === 'unit') return units;
  return level === 'group' ? [[units.flat().reduce(merge)]] : [units.flat()];
}

function runBlock(statistics: WearStatistics, run: number): Block {
  const n = statistics.n[run] as number;
  return {
    n,
    meanX: (statistics.sx[run] as number) / n,
    meanY: (statistics.sy[run] as number) / n,
    xx: statistics.sxxCentred[run] as number,
    xy: statistics.sxyCentred[run] as number,
    yy: statistics.syyCentred[run] as number,
    minX: statistics.minX[run] as number,
    maxX: statistics.maxX[run] as number,
  };
}

/** Both blocks as one, without differences of large sums. */
function merge(one: Block, other: Block): Block {
  const n = one.n + other.n;
  const [dx, dy] = [other.meanX - one.meanX, other.meanY - one.meanY];
  const share = other.n / n;
  return {
    n,
    meanX: one.meanX + share * dx,
    meanY: one.meanY + share * dy,
    xx: one.xx + other.xx + one.n * share * dx * dx,
    xy: one.xy + other.xy + one.n * share * dx * dy,
    yy: one.yy + other.yy + one.n * share * dy * dy,
    minX: Math.min(one.minX, other.minX),
    maxX: Math.max(one.maxX, other.maxX),
  };
}

function sum(blocks: readonly Block[], value: (block: Block) => number): number {
  return blocks.reduce((total, block) => total + value(block), 0);
}
