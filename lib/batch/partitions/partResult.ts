import { sistersTable } from '../../analysis/comparisonTables';
import { defaultSparesSettings } from '../../analysis/demand/defaultSparesSettings';
import { drawFleet } from '../../analysis/demand/drawnFleet';
import { simulateFleet } from '../../analysis/demand/simulateFleet';
import { addTo } from '../../analysis/demand/stockPath';
import { scoredFleet } from '../../analysis/drift/scoredFleet';
import { type Cell, fitsTable, marginsTable, problemsTable } from '../../analysis/fleetTables';
import type { Analysis } from '../../analysis/openAnalysis';
import type { PartStock } from '../../analysis/plan/partStocks';
import { planningOf } from '../../analysis/plan/planning';
import { sisterRatios } from '../../analysis/sisters/sisterRatios';
import { csvLines } from '../../records/csv/writeCsv';
import { type PartSignals, partSignals } from './partSignals';
import type { FleetFacts } from './surveyParts';

type Row = readonly Cell[];

/** One sister group's series against its sisters; the q-values, which need all groups, are left to the merging. */
export interface SisterBlock {
  readonly group: string;
  readonly series: string;
  /** Line of every unit as it will be written, up to its last cell, the q-value. */
  readonly lines: readonly string[];
  readonly tailProbabilities: Float64Array;
}

/** Pieces of a part wanted on a day, in every draw. */
export interface DayDemand {
  readonly date: string;
  readonly day: number;
  readonly pieces: Float64Array;
}

/** What a part of the fleet contributes; rows are those of the written tables. */
export interface PartResult extends PartSignals {
  readonly fits: readonly Row[];
  readonly margins: readonly Row[];
  readonly sisters: readonly SisterBlock[];
  readonly problems: readonly Row[];
  readonly parts: readonly PartStock[];
  readonly demand: ReadonlyMap<string, readonly DayDemand[]>;
  readonly until: string;
}

/** Everything that the written tables need of one part, without what only the whole fleet settles. */
export async function partResult(analysis: Analysis, facts: FleetFacts): Promise<PartResult> {
  const scored = await scoredFleet(analysis, async () => {});
  return {
    fits: fitsTable(analysis.fleet).rows,
    margins: marginsTable(analysis.fleet).rows,
    sisters: [...analysis.fits.values()].map((fit) => {
      const rows = sisterRatios([fit]);
      return {
        group: fit.row.group,
        series: fit.row.series,
        lines: sistersTable(rows, () => undefined).rows.map((row) => csvLines([row]).trimEnd()),
        tailProbabilities: Float64Array.from(rows, ({ rate }) => rate.tailProbability),
      };
    }),
    problems: problemsTable(analysis.fleet).rows,
    ...partSignals(scored, facts),
    ...(await demandOfPart(analysis, facts)),
  };
}

async function demandOfPart(
  analysis: Analysis,
  { draws }: FleetFacts,
): Promise<Pick<PartResult, 'parts' | 'demand' | 'until'>> {
  const planning = await planningOf(analysis);
  const { events, until } = simulateFleet(drawFleet(planning, { draws }), defaultSparesSettings);
  const demand = new Map<string, readonly DayDemand[]>();
  for (const [part, own] of events) {
    const days = new Map<string, DayDemand>();
    for (const event of own) {
      const known = days.get(event.date) ?? {
        date: event.date,
        day: event.day,
        pieces: new Float64Array(draws),
      };
      days.set(event.date, known);
      addTo(known.pieces, event);
    }
    demand.set(part, [...days.values()]);
  }
  return { parts: planning.parts, demand, until };
}
