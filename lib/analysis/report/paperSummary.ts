import type { OrderRow, Spares } from '../demand/types';
import { isoDatePlus } from '../isoDate';
import type { MarginRow } from '../types';
import { unitOutlooks } from '../unitOutlooks';
import { cannotWait, isPastNow } from '../urgency';
import type { MetPoint, Paper, PaperSummary, UnitOnPaper } from './types';

const daysPerWeek = 7;

/** Orders to place before the stock is looked at next: those late, those without a known day, and those within a review period. */
export function ordersDueOf({ asOf, orders, settings }: Spares): readonly OrderRow[] {
  const next = isoDatePlus(asOf, settings.reviewPeriod_weeks * daysPerWeek);
  return orders.filter(({ quantity, orderBy }) => quantity > 0 && (orderBy === null || orderBy <= next));
}

function metPoint(hours: number | null, date: string | null): MetPoint {
  return { date, beyond: hours === null };
}

function metOf(deciding: MarginRow | null): UnitOnPaper['met'] {
  if (deciding === null || deciding.chanceNow === null) return null;
  const { series, limitKind, hoursEarly, hoursMedian, hoursLate } = deciding;
  return {
    series,
    limitKind,
    early: metPoint(hoursEarly, deciding.dateEarly),
    median: metPoint(hoursMedian, deciding.dateMedian),
    late: metPoint(hoursLate, deciding.dateLate),
  };
}

/** What a paper is compared with another by. */
export function paperSummary({ fleet, drift, spares }: Paper): PaperSummary {
  const outlooks = unitOutlooks(fleet);
  return {
    asOf: fleet.asOf,
    units: fleet.units.flatMap(({ unit, nextOverhaulDate, lastOverhaulDate }) => {
      const outlook = outlooks.get(unit);
      if (outlook === undefined) return [];
      return [
        {
          unit,
          cannotWait: cannotWait(outlook),
          pastNow: isPastNow(outlook),
          chanceAtNextOverhaul: outlook.chanceAtNextOverhaul,
          nextOverhaulDate,
          lastOverhaulDate,
          met: metOf(outlook.deciding),
        },
      ];
    }),
    findings: drift.findings,
    ordersDue: ordersDueOf(spares),
  };
}
