import type { FleetRow } from '../fleet/fleetRows';
import { marginCautions, noForecastSentence } from './marginWords';

/** Why a unit has no forecast, or what to bear in mind about the one it has; null if there is nothing. */
export function rowRemark(row: FleetRow): string | null {
  const { deciding, withoutForecast } = row.outlook;
  if (deciding === null) return 'No limit, no verdict.';
  const none = noForecastSentence(deciding);
  if (none !== null) return none;
  const sentences = [
    ...marginCautions(deciding),
    ...(withoutForecast.length === 0 ? [] : [`No forecast for ${row.withoutForecastNames.join('; ')}.`]),
    ...(row.unit.hoursPerYear === null ? ['No hours per year are known, so there are no dates.'] : []),
    ...(row.unit.hoursSource === 'overhauls'
      ? ["Hours carried forward from the unit's own overhauls: it has no plan."]
      : []),
  ];
  return sentences.length === 0 ? null : sentences.join(' ');
}
