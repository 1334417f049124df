import { isPastNow, isPressing } from '../../lib/analysis/urgency';
import { forecastReach, formatCount, formatDate } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { chanceWords, type FleetRow } from '../fleet/fleetRows';
import { counted } from './counted';
import { namesWords } from './namesWords';

/** Units that a remark names; the others are counted. */
const mostNamed = 8;

function firstWords(row: FleetRow): string {
  const date = formatDate(row.unit.nextOverhaulDate);
  return `${row.unit.unit}, ${row.decidingName}, ${chanceWords(row)} by its overhaul of ${date}`;
}

/** What is said where no chance at an overhaul exists: nothing is planned, nothing is forecast, or never both of one unit. */
function withoutChance(limited: readonly FleetRow[]): string {
  const planned = limited.filter((row) => row.unit.nextOverhaulDate !== null);
  const first = limited.find((row) => row.outlook.chanceNow !== null);
  const so = 'so no chance at the next overhaul can be given';
  if (planned.length > 0 && first === undefined) {
    const reason = limited[0]?.outlook.deciding?.reason?.replace(/\.$/, '');
    const why = reason === undefined ? '' : ` (${rewritten(reason)})`;
    return `${counted(planned.length, 'unit has', 'units have')} a planned overhaul, but no unit has a forecast yet${why}, ${so}.`;
  }
  const missing =
    planned.length === 0
      ? `No overhaul is planned (plan.csv), ${so}`
      : `No unit with a forecast has both a planned overhaul and hours a year (plan.csv), ${so}`;
  if (first === undefined) return `${missing}, and no unit has a forecast yet.`;
  const early = first.outlook.deciding?.dateEarly ?? null;
  if (early === null) return `${missing}; no limit is met with a chance of 10 % within ${forecastReach()}.`;
  return `${missing}; the limit met soonest is that of ${first.unit.unit}, ${first.decidingName}: early date ${formatDate(early)}.`;
}

function answer(rows: readonly FleetRow[], limited: readonly FleetRow[]): string {
  const planned = limited.filter((row) => row.outlook.chanceAtNextOverhaul !== null);
  if (planned.length === 0) return withoutChance(limited);
  const pressing = planned.filter(({ outlook }) => isPressing(outlook));
  const first = planned[0];
  if (first === undefined) return withoutChance(limited);
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
  const past = rows.filter(({ outlook }) => isPastNow(outlook));
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
      `${counted(past.length, 'unit')} ${is(past.length)} past a limit now with a chance over 90 %: ${namesWords(
        past.map((row) => row.unit.unit),
        mostNamed,
      )}.`,
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
