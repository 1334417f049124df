import { type UnitOutlook, wholePercents } from '../../lib/analysis/combineChances';
import { isWholeFleet, type Scope, scopeTest, wholeFleet } from '../../lib/analysis/scope';
import { runThrough } from '../../lib/analysis/steps';
import type { FleetResult, UnitRow } from '../../lib/analysis/types';
import { outlooksInSteps } from '../../lib/analysis/unitOutlooks';
import { isPastNow } from '../../lib/analysis/urgency';
import { formatChance } from '../../lib/charts/format';
import { midSentence, seriesName } from '../words/seriesName';

/** One unit as the Fleet page shows it: what its limited series say together. */
export interface FleetRow {
  readonly unit: UnitRow;
  readonly outlook: UnitOutlook;
  /** Name of the series that decides, inside a sentence; null if the unit has no series with a limit. */
  readonly decidingName: string | null;
  readonly withoutForecastNames: readonly string[];
}

/** Which units and series are looked at; an empty text means all. */
export interface FleetFilter extends Scope {
  readonly series: string;
}

/** The filter that lets everything through. */
export const everything: FleetFilter = { ...wholeFleet, series: '' };

/**
 * Order of what cannot wait: past a limit now, then by chance at the next overhaul in whole percents, then by early
 * date, then those with a limit but no forecast.
 */
function byUrgency(a: FleetRow, b: FleetRow): number {
  const past = (row: FleetRow) => (isPastNow(row.outlook) ? 0 : 1);
  if (past(a) !== past(b)) return past(a) - past(b);
  const chance =
    wholePercents(b.outlook.chanceAtNextOverhaul) - wholePercents(a.outlook.chanceAtNextOverhaul);
  if (chance !== 0) return chance;
  const early = (row: FleetRow) => row.outlook.deciding?.dateEarly ?? '9999-12-31';
  if (early(a) !== early(b)) return early(a) < early(b) ? -1 : 1;
  const forecast = (row: FleetRow) => (row.outlook.chanceNow !== null ? 0 : row.outlook.deciding ? 1 : 2);
  if (forecast(a) !== forecast(b)) return forecast(a) - forecast(b);
  return a.unit.unit < b.unit.unit ? -1 : 1;
}

/** Rows of whole fleets that were made already: pages ask for them again and again. */
const made = new WeakMap<FleetResult, readonly FleetRow[]>();

/** The units that pass the filter, most pressing first. */
export function fleetRows(fleet: FleetResult, filter: FleetFilter): readonly FleetRow[] {
  // What one series alone says is another outlook.
  if (filter.series !== '') return runThrough(rowsInSteps(fleet, filter));
  const rows = made.get(fleet) ?? runThrough(wholeFleetInSteps(fleet));
  const passes = scopeTest(filter);
  return isWholeFleet(filter) ? rows : rows.filter(({ unit }) => passes(unit));
}

/** Whether the rows of the whole fleet are at hand. */
export function hasRows(fleet: FleetResult): boolean {
  return made.has(fleet);
}

/** Rows of whole fleets that are being made: whoever wants them goes on where another has got to. */
const underWay = new WeakMap<FleetResult, Generator<void, readonly FleetRow[]>>();

/** Makes the rows of the whole fleet in short steps, for a page that answers meanwhile. */
export function wholeFleetInSteps(fleet: FleetResult): Generator<void, readonly FleetRow[]> {
  const steps = underWay.get(fleet) ?? makingRows(fleet);
  underWay.set(fleet, steps);
  return steps;
}

function* makingRows(fleet: FleetResult): Generator<void, readonly FleetRow[]> {
  const rows = yield* rowsInSteps(fleet, everything);
  made.set(fleet, rows);
  return rows;
}

function* rowsInSteps(fleet: FleetResult, filter: FleetFilter): Generator<void, readonly FleetRow[]> {
  const named = (series: string) => midSentence(seriesName(series, fleet.characteristics));
  const units = fleet.units.filter(scopeTest(filter));
  const outlooks = yield* outlooksInSteps({ ...fleet, units }, filter.series);
  const rows = units.map((unit) => {
    const outlook = outlooks.get(unit.unit) as UnitOutlook;
    return {
      unit,
      outlook,
      decidingName: outlook.deciding === null ? null : named(outlook.deciding.series),
      withoutForecastNames: outlook.withoutForecast.map(named),
    };
  });
  yield;
  return rows.sort(byUrgency);
}

/** Series that carry a limit in some frame, in order of name. */
export function limitedSeries(
  fleet: Pick<FleetResult, 'margins' | 'characteristics'>,
): readonly { readonly code: string; readonly name: string }[] {
  const codes = new Set<string>();
  for (const margin of fleet.margins) if (margin.limit_mm !== null) codes.add(margin.series);
  return [...codes]
    .map((code) => ({ code, name: seriesName(code, fleet.characteristics) }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The chance at the next planned overhaul, with a '≥' where a series without forecast makes it a lower bound. */
export function chanceWords({ outlook }: FleetRow): string {
  const chance = outlook.chanceAtNextOverhaul;
  const text = formatChance(chance);
  if (chance === null || outlook.withoutForecast.length === 0 || text.startsWith('>')) return text;
  return text.startsWith('<') ? '≥\u202f0\u00a0%' : `≥\u202f${text}`;
}
