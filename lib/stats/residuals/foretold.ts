import { wearWorkspace } from '../wear/absorb';
import { integrateWear } from '../wear/integrateWear';
import { noForecastReason } from '../wear/noForecastReason';
import { studentTable } from '../wear/studentTable';
import type { LineMixture, StudentTable, WearPosterior, WearStatistics } from '../wear/types';
import { KnownRuns } from './KnownRuns';
import { type NodeBase, nodeBase } from './NodeBase';
import { readingNodes } from './readingNodes';
import { readingScore } from './readingScore';
import type { TakenReadings } from './TakenReadings';
import { UnitAtNodes } from './UnitAtNodes';
import { together, unitsOf } from './unitsOf';

/**
 * Largest shift of weights at which a posterior's nodes still serve for other readings, see LevelAtNodes. Measured:
 * z then differs by under 0.03 from that of nodes placed for the readings known.
 */
const MOST_SHIFT = 2;
/** Units that mostly carry a forecast already: asking so few costs little. */
const SOME_UNITS = 8;

/** What all units of a group share when their readings are foretold, and the arrays that are filled for one after another. */
export interface ForetellingGroup {
  readonly statistics: WearStatistics;
  readonly taken: TakenReadings;
  /** All runs as absorption takes them. */
  readonly runs: Float64Array;
  readonly atNodes: UnitAtNodes;
  readonly known: KnownRuns;
  /** Whether every reading can be foretold, whichever unit is left out, so that no unit needs looking at. */
  readonly alwaysCarries: boolean;
  readonly tableOf: (readings: number) => StudentTable;
}

/** Readings against what was foretold for them, a column a number: NaN where nothing could be foretold. */
export interface Foretold {
  /** Normal quantile of the probability below the reading. */
  readonly z: Float64Array;
  readonly below: Float64Array;
  /** Level foretold for the reading's run at its hours, mm, without the reading's noise. */
  readonly foretold_mm: Float64Array;
  /** Why nothing could be foretold, by place of the reading. */
  readonly reasons: Map<number, string>;
}

/** Columns for so many readings. */
export function nothingForetold(readings: number): Foretold {
  const column = () => new Float64Array(readings).fill(Number.NaN);
  return { z: column(), below: column(), foretold_mm: column(), reasons: new Map() };
}

/**
 * Prepares a group: the sums of its readings at its posterior's nodes.
 *
 * @param taken the readings of the statistics
 * @throws Error if they are fewer or more than those of the statistics
 */
export function foretellingGroup(
  posterior: WearPosterior,
  statistics: WearStatistics,
  taken: TakenReadings,
): ForetellingGroup {
  if (taken.x.length !== statistics.readings) {
    throw new Error(
      `foretellingGroup requires the ${statistics.readings} readings of its statistics, got ${taken.x.length}`,
    );
  }
  const tables = new Map<number, StudentTable>();
  const tableOf = (count: number) => {
    const table = tables.get(count) ?? studentTable(count - 4);
    tables.set(count, table);
    return table;
  };
  const half = statistics.unitNames.length >> 1;
  const alwaysCarries = [Math.min(SOME_UNITS, half), half].some((size) => carryTwice(statistics, size));
  const atNodes = new UnitAtNodes(nodeBase(readingNodes(posterior), statistics));
  const known = new KnownRuns(statistics, taken);
  return { statistics, taken, runs: wearWorkspace(statistics).runs, atNodes, known, alwaysCarries, tableOf };
}

/** Whether two sets of so many units each carry a forecast: then one of them is whole whichever unit is left out. */
function carryTwice(statistics: WearStatistics, units: number): boolean {
  const sets = [unitsOf(statistics, 0, units), unitsOf(statistics, units, 2 * units)];
  return sets.every((set) => noForecastReason(set) === null);
}

/**
 * Foretells one unit's readings, one after the other, each from the unit's earlier readings and all of the others.
 *
 * The group's nodes are weighed anew by the readings known. Where the unit is so unlike its sisters that its
 * readings had moved the weight away from where it lies without them, nodes are placed anew for the readings
 * known, and serve for the unit's further readings as far as they can.
 *
 * @param unit place among the statistics' units
 * @param into where the unit's readings are written, its first at `at`
 * @param earlierThan number of the unit's readings known before each: by default all that come before it
 */
export function foretellUnit(
  group: ForetellingGroup,
  unit: number,
  into: Foretold,
  at: number,
  earlierThan: (index: number) => number = (index) => index,
): void {
  const { statistics, taken, runs, atNodes, known, alwaysCarries, tableOf } = group;
  const first = taken.firstReading[unit] as number;
  const own = (taken.firstReading[unit + 1] as number) - first;
  const knownStatistics = () => statisticsKnown(statistics, unit, known);
  known.begin(unit);
  atNodes.begin(runs, statistics.firstRun[unit] as number, statistics.firstRun[unit + 1] as number);
  const bases = [atNodes];
  let carries = alwaysCarries;
  for (let k = 0; k < own; k++) {
    know(known, unit, earlierThan(k), bases);
    if (!carries) {
      const reason = noForecastReason(knownStatistics());
      if (reason !== null) {
        into.reasons.set(at + k, reason);
        continue;
      }
      carries = true;
    }
    const [run, x] = [known.runOf(first + k), taken.x[first + k] as number];
    const table = tableOf(statistics.readings - own + known.readings);
    for (const one of bases) one.foretell(known, run, x, table);
    let nearest = atNodes;
    for (const one of bases) if (one.level.shift < nearest.level.shift) nearest = one;
    if (nearest.level.shift > MOST_SHIFT) {
      const then = knownStatistics();
      nearest = newBase(nodeBase(integrateWear(then), then), known);
      nearest.foretell(known, run, x, table);
      bases.push(nearest);
    }
    const { line } = nearest.level;
    const { z, below } = readingScore(line, x, taken.y[first + k] as number, taken.weight[first + k]);
    into.z[at + k] = z;
    into.below[at + k] = below;
    into.foretold_mm[at + k] = meanLevel(line);
  }
}

/** Mean of a level that does not change with x. */
function meanLevel({ weight, start }: LineMixture): number {
  let mean = 0;
  for (let node = 0; node < weight.length; node++) mean += (weight[node] as number) * (start[node] as number);
  return mean;
}

/** Has so many of the unit's readings known. */
function know(known: KnownRuns, unit: number, readings: number, bases: readonly UnitAtNodes[]): void {
  if (readings < known.readings) {
    known.begin(unit);
    for (const base of bases) base.forget();
  }
  while (known.readings < readings) {
    known.take();
    for (const base of bases) base.follow(known);
  }
}

/** The unit at the nodes of a base that was made from what is known of it. */
function newBase(base: NodeBase, known: KnownRuns): UnitAtNodes {
  const atNodes = new UnitAtNodes(base);
  atNodes.begin(known.records, 0, known.runs);
  atNodes.follow(known);
  return atNodes;
}

/** The group's statistics with the unit's known readings in place of all that it has. */
function statisticsKnown(group: WearStatistics, unit: number, known: KnownRuns): WearStatistics {
  const own = known.readings === 0 ? [] : [known.statisticsKnown()];
  const units = group.unitNames.length;
  return together([unitsOf(group, 0, unit), ...own, unitsOf(group, unit + 1, units)]);
}
