import { group, rollup } from 'd3-array';
import type { Pieces } from '../plan/planning';
import { meanOfDraws } from './drawnCounts';
import type { DrawnFleet, DrawnUnit } from './drawnFleet';
import type { IntervalWear } from './types';
import { walkUnit } from './walkUnit';

/** Intervals looked at, h; the one that most units of a group are planned with is looked at too. */
export const intervalGrid_h: readonly number[] = Array.from({ length: 17 }, (_, k) => 8_000 + 1_000 * k);

/** Intervals that each unit is carried through from new. */
const intervals = 4;
/** The curve needs fewer draws than an order. */
const mostDraws = 200;

/**
 * Chance of an in-service exceedance, overhauls and parts a year against the interval between overhauls, for every group.
 *
 * Every unit that runs is carried through four equal intervals from new, its parts replaced by the same rule as in the plan.
 * A comparison of intervals by wear alone: it never authorises a longer one.
 *
 * @param between called between intervals, so that other messages have their turn
 */
export async function intervalWear(
  fleet: DrawnFleet,
  acceptedRisk: number,
  grid_h: readonly number[] = intervalGrid_h,
  between: (share: number) => Promise<void> = async () => {},
): Promise<readonly IntervalWear[]> {
  const running = fleet.units.filter(
    ({ unit, series }) => series.length > 0 && (unit.plan.unit.hoursPerYear ?? 0) > 0,
  );
  const groups = [...group(running, ({ unit }) => unit.plan.unit.row.group)].sort(([a], [b]) =>
    a < b ? -1 : 1,
  );
  const draws = Math.min(mostDraws, fleet.draws);
  const points: IntervalWear[] = [];
  for (const [index, [name, units]] of groups.entries()) {
    const planned_h = plannedInterval(units);
    const seen_h = longestSeen(units);
    const all = [...new Set([...grid_h, ...(planned_h === null ? [] : [planned_h])])].sort((a, b) => a - b);
    for (const interval_h of all) {
      await between(index / groups.length);
      points.push({
        group: name,
        interval_h,
        planned: interval_h === planned_h,
        extrapolated: interval_h > seen_h,
        ...wearAt(units, interval_h, acceptedRisk, draws),
      });
    }
  }
  return points;
}

/** The interval that most units have in plan.csv, the longest of several such; null if none has one. */
function plannedInterval(units: readonly DrawnUnit[]): number | null {
  const given = units.flatMap(({ unit }) => unit.plan.interval_h ?? []).filter((interval) => interval > 0);
  const counts = rollup(
    given,
    (own) => own.length,
    (interval) => interval,
  );
  const [most] = [...counts].sort(([a, m], [b, n]) => n - m || b - a);
  return most?.[0] ?? null;
}

/** Run hours that readings of every limited series reach in the group. */
function longestSeen(units: readonly DrawnUnit[]): number {
  const seen = units.flatMap(({ series }) =>
    series.flatMap(({ plan }) => plan.question.fit?.row.observedRunHours ?? []),
  );
  return seen.reduce((least, hours) => Math.min(least, hours), Number.POSITIVE_INFINITY);
}

function wearAt(units: readonly DrawnUnit[], interval_h: number, acceptedRisk: number, draws: number) {
  const hours = Float64Array.from({ length: intervals }, (_, k) => interval_h * (k + 1));
  const following = hours.map((h) => h + interval_h);
  const fitted = new Map<string, number>();
  let [chances, overhaulsAYear, exceedancesAYear] = [0, 0, 0];
  for (const drawn of units) {
    const { unit } = drawn;
    const walk = walkUnit(drawn, draws, { hours, following, acceptedRisk, from: 'new' });
    const chance = meanOfDraws(walk.exceeded) / draws;
    const aYear = (unit.plan.unit.hoursPerYear ?? 0) / interval_h;
    const use = ({ part, pieces }: Pieces) => fitted.set(part, (fitted.get(part) ?? 0) + pieces * aYear);
    unit.consumables.forEach(use);
    walk.fitted.forEach((draw, at) => {
      const part = walk.parts[at % walk.parts.length] as string;
      if (draw !== null)
        use({ part, pieces: ((unit.pieces.get(part) ?? 1) * meanOfDraws(draw)) / intervals });
    });
    chances += chance;
    overhaulsAYear += aYear;
    exceedancesAYear += aYear * chance;
  }
  return {
    chance: chances / units.length,
    overhaulsAYear,
    exceedancesAYear,
    partsAYear: [...fitted].map(([part, pieces]) => ({ part, pieces })),
  };
}
