import { group } from 'd3-array';
import { integrateWear } from '../wear/integrateWear';
import { noForecastReason } from '../wear/noForecastReason';
import { runLevel } from '../wear/runLevel';
import { studentTable } from '../wear/studentTable';
import type { LineMixture, StudentTable, WearPosterior, WearReading, WearStatistics } from '../wear/types';
import { wearStatistics } from '../wear/wearStatistics';
import { aboutCentre } from './aboutCentre';
import { firstReadings } from './firstReadings';
import { knownPosterior, weightBefore, weightShift } from './knownPosterior';
import { addSums, nodeSums } from './nodeSums';

/**
 * Largest shift of weights at which a posterior's nodes still serve for other readings, see weightShift. Measured:
 * z then differs by under 0.03 from that of nodes placed for the readings known.
 */
const MOST_SHIFT = 2;

/** What all units of a group share when their readings are foretold. */
export interface ForetellingGroup {
  readonly base: NodeBase;
  readonly readings: readonly WearReading[];
  readonly readingsOf: ReadonlyMap<string, readonly WearReading[]>;
  /** Whether every reading can be foretold, whichever unit is left out, so that no unit needs looking at. */
  readonly alwaysCarries: boolean;
  readonly tableOf: (readings: number) => StudentTable;
}

/** A posterior with the sums of the readings that it was made from, at its nodes, and what these weigh without them. */
interface NodeBase {
  readonly posterior: WearPosterior;
  readonly all: Float64Array;
  readonly before: Float64Array;
}

/** Level of a reading's run as foretold from the readings known before it; or why it was not. */
export type Foretold = { readonly line: LineMixture } | { readonly reason: string };

/** Prepares a group: the sums of its readings at its posterior's nodes. */
export function foretellingGroup(
  posterior: WearPosterior,
  statistics: WearStatistics,
  readings: readonly WearReading[],
): ForetellingGroup {
  const tables = new Map<number, StudentTable>();
  const tableOf = (count: number) => {
    const table = tables.get(count) ?? studentTable(count - 4);
    tables.set(count, table);
    return table;
  };
  // Where two halves of the units each carry a forecast, one of them is whole whichever unit is left out.
  const firstHalf = new Set(statistics.unitNames.slice(0, statistics.unitNames.length >> 1));
  const halves = [true, false].map((first) => readings.filter(({ unit }) => firstHalf.has(unit) === first));
  const alwaysCarries = halves.every((half) => noForecastReason(wearStatistics(half)) === null);
  const readingsOf = group(readings, ({ unit }) => unit);
  return { base: nodeBase(posterior, statistics), readings, readingsOf, alwaysCarries, tableOf };
}

/**
 * Foretells one unit's readings, one after the other, each from the unit's earlier readings and all of the others.
 *
 * The group's nodes are weighed anew by the readings known. Where the unit is so unlike its sisters that its
 * readings had moved the weight away from where it lies without them, nodes are placed anew for the readings
 * known, and serve for the unit's further readings as far as they can.
 *
 * @param own readings of one unit, in the order in which they were taken
 * @param earlierThan number of the unit's readings known before each: by default all that come before it
 */
export function foretoldOfUnit(
  { base, readings, readingsOf, alwaysCarries, tableOf }: ForetellingGroup,
  own: readonly WearReading[],
  earlierThan: (index: number) => number = (index) => index,
): readonly Foretold[] {
  const unit = own[0]?.unit ?? '';
  const othersCount = readings.length - (readingsOf.get(unit)?.length ?? 0);
  // Asked for only where the group's own nodes do not serve: all readings for every unit would be quadratic.
  let listed: readonly WearReading[] | null = null;
  const others = () => {
    listed ??= readings.filter((reading) => reading.unit !== unit);
    return listed;
  };
  const statisticsOf = firstReadings(own, base.posterior.yCentre);
  const bases = [unitBase(base, own)];
  let carries = alwaysCarries;
  return own.map((reading, k): Foretold => {
    const known = earlierThan(k);
    if (!carries) {
      const reason = noForecastReason(wearStatistics([...others(), ...own.slice(0, known)]));
      if (reason !== null) return { reason };
      carries = true;
    }
    const sums = known === 0 ? null : statisticsOf(known);
    const table = tableOf(othersCount + known);
    const weighed = bases.map((one) => weighAnew(one, sums, table));
    const nearest = weighed.reduce((best, next) => (next.shift < best.shift ? next : best));
    if (nearest.shift <= MOST_SHIFT) return { line: lineOf(nearest.posterior, sums, reading.run) };
    const earlier = own.slice(0, known);
    const statistics = wearStatistics([...others(), ...earlier]);
    const posterior = integrateWear(statistics);
    bases.push(unitBase(nodeBase(posterior, statistics), earlier));
    return { line: lineOf(posterior, sums, reading.run) };
  });
}

/** Line of a run given the unit's earlier readings: of a unit not seen where it has none. */
function lineOf(posterior: WearPosterior, earlier: WearStatistics | null, run: string): LineMixture {
  if (earlier === null) return runLevel(posterior, NO_READINGS, null, null);
  const index = earlier.runNames.indexOf(run);
  return runLevel(posterior, earlier, 0, index < 0 ? null : index);
}

const NO_READINGS = wearStatistics([]);

/** A base with the sums of the readings of all other units at its nodes. */
interface UnitBase extends NodeBase {
  readonly others: Float64Array;
}

function nodeBase(posterior: WearPosterior, statistics: WearStatistics): NodeBase {
  const all = nodeSums(posterior, aboutCentre(statistics, posterior.yCentre));
  return { posterior, all, before: weightBefore(posterior, all) };
}

function unitBase(base: NodeBase, own: readonly WearReading[]): UnitBase {
  if (own.length === 0) return { ...base, others: base.all };
  const sums = nodeSums(base.posterior, aboutCentre(wearStatistics(own), base.posterior.yCentre));
  return { ...base, others: addSums(base.all, sums, -1) };
}

function weighAnew(
  { posterior, before, others }: UnitBase,
  earlier: WearStatistics | null,
  table: StudentTable,
) {
  const known =
    earlier === null
      ? others
      : addSums(others, nodeSums(posterior, aboutCentre(earlier, posterior.yCentre)), 1);
  const then = knownPosterior(posterior, before, known, table);
  return { posterior: then, shift: weightShift(posterior.weight, then.weight) };
}
