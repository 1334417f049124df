import { defaultSparesSettings } from '../../analysis/demand/defaultSparesSettings';
import { demandRows, quartersBetween } from '../../analysis/demand/demandRows';
import { orderRow } from '../../analysis/demand/orderRow';
import type { DemandEvent } from '../../analysis/demand/simulateFleet';
import { demandTable, ordersTable, type ResultTable } from '../../analysis/fleetTables';
import type { PartStock } from '../../analysis/plan/partStocks';
import type { DayDemand } from './partResult';
import type { PartSummary } from './partStore';
import type { FleetFacts } from './surveyParts';

/** Gathers what all parts of the fleet want of each part in stock, day by day: its stock is one for the whole fleet. */
export class SparesMerge {
  private readonly stocks = new Map<string, PartStock>();
  private readonly wanted = new Map<string, Map<string, DayDemand>>();
  private until = '';

  add({ parts, demand, until }: PartSummary): void {
    this.until = until;
    for (const part of parts) if (!this.stocks.has(part.part)) this.stocks.set(part.part, part);
    for (const [part, days] of demand) {
      const known = this.wanted.get(part) ?? new Map<string, DayDemand>();
      this.wanted.set(part, known);
      for (const day of days) {
        const before = known.get(day.date);
        if (before === undefined) known.set(day.date, day);
        else
          for (const [draw, pieces] of day.pieces.entries())
            before.pieces[draw] = (before.pieces[draw] ?? 0) + pieces;
      }
    }
  }

  /** Demand and orders of the whole fleet. */
  tables({ asOf, draws }: FleetFacts): readonly ResultTable[] {
    const quarters = quartersBetween(asOf, this.until);
    const parts = [...this.stocks.values()].sort((a, b) => (a.part < b.part ? -1 : 1));
    const demand = [];
    const orders = [];
    for (const part of parts) {
      const events = this.eventsOf(part.part);
      demand.push(...demandRows(part.part, events, quarters, draws));
      orders.push(orderRow(part, events, draws, asOf, this.until, defaultSparesSettings));
    }
    return [demandTable({ demand }), ordersTable({ orders })];
  }

  /** One event a day stands for all units opened on it. */
  private eventsOf(part: string): readonly DemandEvent[] {
    return [...(this.wanted.get(part)?.values() ?? [])]
      .sort((a, b) => a.day - b.day)
      .map(({ date, day, pieces }) => ({ date, day, unit: '', pieces: 1, fitted: pieces }));
  }
}
