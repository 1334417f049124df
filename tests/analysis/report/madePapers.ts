import type { OrderRow } from '../../../lib/analysis/demand/types';
import type { DriftFinding } from '../../../lib/analysis/drift/types';
import type { PaperSummary, UnitOnPaper } from '../../../lib/analysis/report/types';

/** Papers written by hand: invented, and small enough to compare by eye. */

/** A unit whose thrust play meets its limit between two days; a null day is beyond the reach of a forecast. */
export function unitOnPaper(
  unit: string,
  [early, median, late]: readonly [string | null, string | null, string | null],
  changes: Partial<UnitOnPaper> = {},
): UnitOnPaper {
  const point = (date: string | null) => ({ date, beyond: date === null });
  return {
    unit,
    cannotWait: false,
    pastNow: false,
    chanceAtNextOverhaul: 0.04,
    nextOverhaulDate: '2028-01-01',
    lastOverhaulDate: '2025-06-01',
    met: {
      series: 'thrust_play',
      limitKind: 'upper',
      early: point(early),
      median: point(median),
      late: point(late),
    },
    ...changes,
  };
}

export function finding(unit: string, series: string): DriftFinding {
  const signal = {
    id: `${unit} ${series}`,
    unit,
    group: 'Lark',
    series,
    chart: 'cusum',
    rule: 'cusum',
    overhaul: 'OH-1',
    date: '2026-02-01',
    stage: 'found',
    side: 'upper',
    statistic: 6.2,
    threshold: 5.1,
    sinceDate: '2025-02-01',
  } as const;
  return {
    unit,
    group: 'Lark',
    series,
    signals: [signal],
    strongest: signal,
    byChance_per_year: 0.02,
    side: 'upper',
    sinceDate: '2025-02-01',
    lastDate: '2026-02-01',
    expectedFalse: 0.1,
    pattern: 'persists',
  };
}

export function order(part: string, changes: Partial<OrderRow> = {}): OrderRow {
  return {
    part,
    name: null,
    onHand: 1,
    onOrder: 0,
    due: null,
    leadTime_weeks: 18,
    shortOn: '2027-06-25',
    orderBy: '2027-02-19',
    late: false,
    quantity: 2,
    expectedShortage: 1.2,
    demandMean: 3,
    demandP90: 5,
    cost: null,
    currency: null,
    reason: 'stock and deliveries fall short',
    ...changes,
  };
}

export function summary(asOf: string, changes: Partial<PaperSummary> = {}): PaperSummary {
  return { asOf, units: [], findings: [], ordersDue: [], ...changes };
}
