import { formatCount, formatDate } from '../../lib/charts/format';
import { chanceWords, type FleetRow } from '../fleet/fleetRows';
import { counted } from './counted';
import { pastChance } from './marginWords';

/** Chance from which the Fleet page counts a unit as reaching a limit. */
export const pressingChance = 0.1;

function isPressing(row: FleetRow): boolean {
  return (row.outlook.chanceAtNextOverhaul ?? 0) > pressingChance;
}

function firstWords(row: FleetRow): string {
  const date = formatDate(row.unit.nextOverhaulDate);
  return `${row.unit.unit}, ${row.decidingName}, ${chanceWords(row)} by its overhaul of ${date}`;
}

/** What is said where no chance at an overhaul exists. */
function withoutPlan(limited: readonly FleetRow[]): string {
  const forecast = limited.filter((row) => row.outlook.chanceNow !== null);
  const missing = 'No overhaul is planned (plan.csv), so no chance at the next overhaul can be given';
  const first = forecast[0];
  if (first === undefined) return `${missing}, and no unit has a forecast yet.`;
  const early = first.outlook.deciding?.dateEarly ?? null;
  if (early === null) return `${missing}; no limit is met with a chance of 10 % within 100\u202f000 h.`;
  return `${missing}; the limit met soonest is that of ${first.unit.unit}, ${first.decidingName}: early date ${formatDate(early)}.`;
}

function answer(rows: readonly FleetRow[], limited: readonly FleetRow[]): string {
  const planned = limited.filter((row) => row.outlook.chanceAtNextOverhaul !== null);
  if (planned.length === 0) return withoutPlan(limited);
  const pressing = planned.filter(isPressing);
  const first = planned[0];
  if (first === undefined) return withoutPlan(limited);
  if (pressing.length === 0) {
    const none =
      rows.length === 1 ? 'The one unit does not reach' : `None of ${counted(rows.length, 'unit')} reaches`;
    return `${none} a limit with a chance over 10 % before its next planned overhaul; the highest chance is that of ${firstWords(first)}.`;
  }
  const verb = pressing.length === 1 ? 'reaches' : 'reach';
  const their = pressing.length === 1 ? 'its' : 'their';
  const which = pressing.length === 1 ? ': ' : '; the first is ';
  return `${formatCount(pressing.length)} of ${counted(rows.length, 'unit')} ${verb} a limit with a chance over 10 % before ${their} next planned overhaul${which}${firstWords(first)}.`;
}

/**
 * The answer of the Fleet page in words, for rows in order of urgency: how many units reach a limit with a chance
 * over 10 % before their next planned overhaul and which is the first, or what is missing for an answer.
 */
export function fleetSentence(rows: readonly FleetRow[], filtered: boolean): string {
  if (rows.length === 0) {
    return filtered
      ? 'No unit passes the filters.'
      : 'The open data hold no unit: add overhaul records on the Records page.';
  }
  const limited = rows.filter((row) => row.outlook.deciding !== null);
  if (limited.length === 0) {
    return `No limit is known for ${rows.length === 1 ? 'the one unit' : `any of ${counted(rows.length, 'unit')}`}, so there is no verdict: add limits (limits.csv) on the Records page.`;
  }
  return answer(rows, limited);
}

/** What qualifies the answer: units past a limit now, without forecast, without plan, without limit; one sentence each. */
export function fleetRemarks(rows: readonly FleetRow[]): readonly string[] {
  const past = rows.filter((row) => (row.outlook.chanceNow ?? 0) > pastChance);
  const limited = rows.filter((row) => row.outlook.deciding !== null);
  const noForecast = limited.filter((row) => row.outlook.chanceNow === null);
  const partly = limited.filter(
    (row) => row.outlook.chanceNow !== null && row.outlook.withoutForecast.length > 0,
  );
  const noPlan = limited.filter((row) => row.unit.nextOverhaulDate === null);
  const noLimit = rows.length - limited.length;
  const is = (count: number) => (count === 1 ? 'is' : 'are');
  const has = (count: number) => (count === 1 ? 'has' : 'have');
  const sentences = [
    past.length > 0 &&
      `${counted(past.length, 'unit')} ${is(past.length)} past a limit now with a chance over 90 %: ${past.map((row) => row.unit.unit).join(', ')}.`,
    noForecast.length > 0 &&
      `${counted(noForecast.length, 'unit')} ${has(noForecast.length)} no forecast (hatched).`,
    partly.length > 0 &&
      `${counted(partly.length, 'unit')} ${has(partly.length)} a series without forecast: the chance shown (≥) is a lower bound.`,
    noPlan.length > 0 &&
      noPlan.length < limited.length &&
      `${counted(noPlan.length, 'unit')} ${has(noPlan.length)} no planned overhaul.`,
    noLimit > 0 &&
      limited.length > 0 &&
      `${counted(noLimit, 'unit')} ${has(noLimit)} no limit, and so no verdict.`,
  ];
  return sentences.filter((sentence) => sentence !== false);
}
