import { group } from 'd3-array';
import type { LimitInForce, RunOf } from '../store/questions';
import type { MarginQuestion } from './currentLine';
import { type GroupFit, groupKey } from './groupFits';
import { type QuarterAhead, quartersAfter } from './isoDate';
import type { UnitNow } from './unitNow';

/** Looks up, for any unit, every series and limit that its margins are asked for. */
export interface QuestionIndex {
  questionsOf(unit: UnitNow): readonly MarginQuestion[];
  /** Days for which chances are asked, the same for every unit. */
  readonly quarters: readonly QuarterAhead[];
}

/**
 * Builds the index once, so that asking for all units takes time in proportion to their number.
 *
 * @param quartersAhead quarters for which chances are asked
 */
export function questionIndex(
  fits: ReadonlyMap<string, GroupFit>,
  runOf: RunOf,
  limits: readonly LimitInForce[],
  asOf: string,
  quartersAhead: number,
): QuestionIndex {
  const quarters = quartersAfter(asOf, quartersAhead);
  const limitsOfFrame = group(limits, (limit) => limit.frame);
  const fitsOfGroup = group(fits.values(), (fit) => fit.row.group);
  return {
    quarters,
    questionsOf(unit) {
      const ownLimits = limitsOfFrame.get(unit.row.frame) ?? [];
      const series = new Set(ownLimits.map((limit) => limit.series));
      for (const fit of fitsOfGroup.get(unit.row.group) ?? []) series.add(fit.row.series);
      return [...series].sort().flatMap((name) => {
        const found = ownLimits.filter((limit) => limit.series === name);
        const common = {
          unit,
          series: name,
          fit: fits.get(groupKey(unit.row.group, name)) ?? null,
          run: runOf(unit.row.unit, unit.row.frame, name),
          asOf,
          quarters,
        };
        return (found.length === 0 ? [null] : found).map((limit) => ({ ...common, limit }));
      });
    },
  };
}
