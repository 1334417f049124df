import { group } from 'd3-array';
import { combineChances, type UnitOutlook } from './combineChances';
import type { FleetResult } from './types';

/**
 * What the limited series of every unit say together, in the order of the units.
 *
 * @param series the only series that is looked at; empty for all
 */
export function unitOutlooks(
  { units, margins, characteristics }: Pick<FleetResult, 'units' | 'margins' | 'characteristics'>,
  series = '',
): ReadonlyMap<string, UnitOutlook> {
  const codes = characteristics.map(({ code }) => code);
  const looked = series === '' ? margins : margins.filter((margin) => margin.series === series);
  const marginsOf = group(looked, ({ unit }) => unit);
  return new Map(units.map(({ unit }) => [unit, combineChances(marginsOf.get(unit) ?? [], codes)]));
}
