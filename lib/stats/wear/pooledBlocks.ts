import type { WearStatistics } from './types';

/** Sums of runs, units or a group about their own means, a column a sum; y above yCentre. */
export interface Blocks {
  readonly n: Float64Array;
  readonly meanX: Float64Array;
  readonly meanY: Float64Array;
  readonly xx: Float64Array;
  readonly xy: Float64Array;
  readonly yy: Float64Array;
  readonly minX: Float64Array;
  readonly maxX: Float64Array;
}

/** A block a run. */
export function runBlocks(statistics: WearStatistics): Blocks {
  const { n, sx, sy, sxxCentred, sxyCentred, syyCentred, minX, maxX } = statistics;
  return {
    n,
    meanX: sx.map((value, run) => value / (n[run] as number)),
    meanY: sy.map((value, run) => value / (n[run] as number)),
    xx: sxxCentred,
    xy: sxyCentred,
    yy: syyCentred,
    minX,
    maxX,
  };
}

/** A block a unit, pooled from its runs. */
export function unitBlocks(runs: Blocks, firstRun: Int32Array): Blocks {
  const size = firstRun.length - 1;
  const column = () => new Float64Array(size);
  const pooled = {
    n: column(),
    meanX: column(),
    meanY: column(),
    xx: column(),
    xy: column(),
    yy: column(),
    minX: column().fill(Number.POSITIVE_INFINITY),
    maxX: column().fill(Number.NEGATIVE_INFINITY),
  };
  for (let unit = 0; unit < size; unit++) {
    for (let run = firstRun[unit] as number; run < (firstRun[unit + 1] as number); run++) {
      merge(pooled, unit, runs, run);
    }
  }
  return pooled;
}

/** One block of all. */
export function groupBlocks(units: Blocks): Blocks {
  return unitBlocks(units, Int32Array.of(0, units.n.length));
}

/** Merges a block into another, without differences of large sums. */
function merge(into: Blocks, place: number, from: Blocks, k: number): void {
  const [before, added] = [into.n[place] as number, from.n[k] as number];
  const share = added / (before + added);
  const dx = (from.meanX[k] as number) - (into.meanX[place] as number);
  const dy = (from.meanY[k] as number) - (into.meanY[place] as number);
  const add = (column: 'n' | 'meanX' | 'meanY' | 'xx' | 'xy' | 'yy', value: number) => {
    into[column][place] = (into[column][place] as number) + value;
  };
  add('n', added);
  add('meanX', share * dx);
  add('meanY', share * dy);
  add('xx', (from.xx[k] as number) + before * share * dx * dx);
  add('xy', (from.xy[k] as number) + before * share * dx * dy);
  add('yy', (from.yy[k] as number) + before * share * dy * dy);
  into.minX[place] = Math.min(into.minX[place] as number, from.minX[k] as number);
  into.maxX[place] = Math.max(into.maxX[place] as number, from.maxX[k] as number);
}
