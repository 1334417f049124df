import type { WearStatistics } from '../wear/types';

/** Columns of the statistics with a number a run. */
const runColumns = [
  'n',
  'sx',
  'sxx',
  'sy',
  'sxy',
  'syy',
  'sxxCentred',
  'sxyCentred',
  'syyCentred',
  'minX',
  'maxX',
] as const;

/** The statistics of some units, from one up to but without another, about the same centre. The sum of log weights is left at zero: no forecast asks for it. */
export function unitsOf(statistics: WearStatistics, from: number, to: number): WearStatistics {
  const first = statistics.firstRun[from] as number;
  const end = statistics.firstRun[to] as number;
  const columns = runColumns.map((name) => [name, statistics[name].subarray(first, end)]);
  const count = statistics.count.subarray(first, end);
  return {
    ...statistics,
    ...(Object.fromEntries(columns) as Pick<WearStatistics, (typeof runColumns)[number]>),
    unitNames: statistics.unitNames.slice(from, to),
    runNames: statistics.runNames.slice(first, end),
    firstRun: statistics.firstRun.subarray(from, to + 1).map((run) => run - first),
    count,
    readings: count.reduce((sum, readings) => sum + readings, 0),
    logWeightSum: 0,
  };
}

/** Statistics of several sets of units together, all about the same centre, in their order. */
export function together(parts: readonly WearStatistics[]): WearStatistics {
  const [one] = parts;
  if (one === undefined) throw new Error('together requires at least 1 set of units, got none');
  const columns = runColumns.map((name) => [name, joined(parts.map((part) => part[name]))]);
  const ends: number[] = [0];
  for (const { firstRun } of parts) {
    const before = ends.at(-1) as number;
    for (const end of firstRun.subarray(1)) ends.push(before + end);
  }
  return {
    ...one,
    ...(Object.fromEntries(columns) as Pick<WearStatistics, (typeof runColumns)[number]>),
    unitNames: parts.flatMap(({ unitNames }) => unitNames),
    runNames: parts.flatMap(({ runNames }) => runNames),
    firstRun: Int32Array.from(ends),
    count: Int32Array.from(joined(parts.map(({ count }) => count))),
    readings: parts.reduce((sum, { readings }) => sum + readings, 0),
    logWeightSum: 0,
  };
}

function joined(columns: readonly ArrayLike<number>[]): Float64Array {
  const all = new Float64Array(columns.reduce((sum, { length }) => sum + length, 0));
  let place = 0;
  for (const column of columns) {
    all.set(column, place);
    place += column.length;
  }
  return all;
}
