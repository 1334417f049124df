import { chartedUnit } from '../../analysis/drift/chartedSeries';
import type { ScoredFleet } from '../../analysis/drift/scoredFleet';
import { hasSignal } from '../../analysis/drift/seriesSignals';
import type { ChartedSeries } from '../../analysis/drift/types';
import type { FinishedPart } from './PartTask';
import type { FleetFacts } from './surveyParts';

/** What a part of the fleet contributes to its signals. */
export interface PartSignals {
  readonly histories: FinishedPart['histories'];
  /** Every series with a signal at the least thresholds. */
  readonly candidates: readonly ChartedSeries[];
  /** First and last day of a charted reading, the first not after the fleet's day; the last is '' if there is none. */
  readonly charted: { readonly first: string; readonly last: string };
}

/** The series of a part that the fleet's thresholds may find a signal in; only these become objects. */
export function partSignals(
  { groups, overhauls }: ScoredFleet,
  { asOf, leastThresholds }: FleetFacts,
): PartSignals {
  const histories = { upper: [] as number[], both: [] as number[] };
  const candidates: ChartedSeries[] = [];
  let [first, last] = [asOf, ''];
  for (const group of groups) {
    const { sides, taken, openings, foretold } = group;
    const charts = leastThresholds.filter(({ chart }) => chart.sides === sides);
    for (const opening of openings) {
      const date = overhauls.date[opening] as string;
      if (date < first) first = date;
      if (date > last) last = date;
    }
    for (let unit = 0; unit + 1 < taken.firstReading.length; unit++) {
      const all = foretold.z.subarray(taken.firstReading[unit], taken.firstReading[unit + 1]);
      const z = Array.from(all).filter((score) => !Number.isNaN(score));
      if (z.length > 0) histories[sides].push(z.length);
      if (charts.some(({ chart, threshold }) => hasSignal(chart.kind, z, threshold, sides)))
        candidates.push(chartedUnit(group, unit, overhauls));
    }
  }
  return { histories, candidates, charted: { first, last } };
}
