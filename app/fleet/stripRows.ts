import { chanceByQuarter } from '../../lib/analysis/combineChances';
import type { FleetResult } from '../../lib/analysis/types';
import type { FleetStripRow } from '../../lib/charts/fleetStripData';
import { formatDate } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { chanceWords, type FleetRow } from './fleetRows';

/** Whether the unit has a forecast by date. */
export function hasDates({ outlook }: FleetRow): boolean {
  return outlook.forecast.some((margin) => margin.chanceByQuarter.length > 0);
}

function note(row: FleetRow): string {
  if (row.outlook.deciding === null) return 'no limit';
  if (row.outlook.chanceNow === null) return 'no forecast';
  if (!hasDates(row)) return 'no dates';
  if (row.outlook.chanceAtNextOverhaul === null) return 'no plan';
  return chanceWords(row);
}

function hint(row: FleetRow): string {
  const { unit, outlook, decidingName } = row;
  if (outlook.deciding === null) return `${unit.unit}: no limit, no verdict`;
  if (outlook.chanceNow === null)
    return `${unit.unit}: no forecast, ${rewritten(outlook.deciding.reason ?? 'no reason given')}`;
  const early = formatDate(outlook.deciding.dateEarly);
  const chance =
    outlook.chanceAtNextOverhaul === null
      ? 'no overhaul planned'
      : `${chanceWords(row)} by its overhaul of ${formatDate(unit.nextOverhaulDate)}`;
  return `${unit.unit}: ${decidingName} decides, early date ${early}; ${chance}`;
}

/** Strips for the picture, in the order of the rows. */
export function stripRows(
  rows: readonly FleetRow[],
  { quarters, characteristics }: Pick<FleetResult, 'quarters' | 'characteristics'>,
): readonly FleetStripRow[] {
  const codes = characteristics.map(({ code }) => code);
  return rows.map((row) => ({
    unit: row.unit.unit,
    chanceByDate: chanceByQuarter(row.outlook, codes).map((chance, quarter) => ({
      date: quarters[quarter] ?? '',
      chance,
    })),
    plannedOverhauls: row.unit.plannedOverhauls,
    ratedLifeDate: row.unit.ratedLifeDate,
    note: note(row),
    longNote: row.decidingName === null ? note(row) : `${note(row)}  ${row.decidingName}`,
    hint: hint(row),
  }));
}
