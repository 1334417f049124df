import type { UnitSeries } from '../../lib/analysis/types';
import { formatRate } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';

/** What the unit's own straight line says, beside the estimate that its sisters inform, or why there is no line. */
export function ownLineSentence(series: UnitSeries): string {
  const { ownSlope_mm_per_10kh: own, theilSenSlope_mm_per_10kh: check } = series;
  if (own === null)
    return `The unit has no straight line of its own: ${rewritten(series.ownLineReason ?? 'too few readings in this run')}.`;
  const line = `The unit's own straight line in this run has a slope of ${formatRate(own, null)}`;
  if (check === null) return `${line}.`;
  return `${line}; by Theil and Sen's method, which one wild reading cannot turn, it is ${formatRate(check, null)}.`;
}
