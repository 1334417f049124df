import type { UnitOutlook } from '../../lib/analysis/combineChances';
import type { OrderRow } from '../../lib/analysis/demand/types';
import type { DriftFinding } from '../../lib/analysis/drift/types';
import type { HeldEffect, HeldRows, Paper } from '../../lib/analysis/report/types';
import { isWholeFleet, type Scope } from '../../lib/analysis/scope';
import { formatCount, formatDate, formatPercent } from '../../lib/charts/format';
import { counted } from './counted';
import { driftSentence } from './driftSentence';
import { namesWords } from './namesWords';
import { sumsOf } from './recordsSentence';

/** Units of a scope that its name lists; the others are counted. */
const mostNamed = 8;

/** A scope in words: 'the whole fleet', 'frame Osprey at Port Merrow'. */
export function scopeWords({ site, frame, engine, workshop, units }: Scope): string {
  if (isWholeFleet({ site, frame, engine, workshop, units })) return 'the whole fleet';
  const words = [
    frame !== '' && `frame ${frame}`,
    site !== '' && `at ${site}`,
    engine !== '' && `on engine ${engine}`,
    workshop !== '' && `opened last by ${workshop}`,
    units.length > 0 && `of ${namesWords(units, mostNamed)}`,
  ].filter((word) => word !== false);
  return frame === '' ? `units ${words.join(' ')}` : words.join(' ');
}

/** What the paper is about: 'Planning paper for units at Skua Head, as of 2026-10-21: 12 of 52 units.' */
export function paperTitle({ scope, fleet, unitsInFleet }: Paper): string {
  const units = isWholeFleet(scope)
    ? counted(unitsInFleet, 'unit')
    : `${formatCount(fleet.units.length)} of ${counted(unitsInFleet, 'unit')}`;
  return `Planning paper for ${scopeWords(scope)}, as of ${formatDate(fleet.asOf)}: ${units}.`;
}

/** Why the paper holds no verdicts: no unit in its scope, or nothing on record by its day; null if it has what it needs. */
export function emptyPaperSentence({ scope, fleet, firstDate }: Paper): string | null {
  if (fleet.units.length === 0)
    return isWholeFleet(scope)
      ? 'The open data hold no unit: add overhaul records on the Records page.'
      : `No unit is in the scope (${scopeWords(scope)}) on ${formatDate(fleet.asOf)}: choose another one.`;
  if (fleet.fits.length > 0) return null;
  const first = firstDate === null ? '' : `; the first overhaul on record is of ${formatDate(firstDate)}`;
  return `No reading in the scope is dated up to ${formatDate(fleet.asOf)}${first}: choose a later day.`;
}

/** Said where no unit is pressing: units without a forecast to a limit were not judged, and are not said to wait. */
export function noUrgentUnit(outlooks: readonly Pick<UnitOutlook, 'chanceNow'>[]): string {
  const unknown = outlooks.filter(({ chanceNow }) => chanceNow === null).length;
  if (unknown === 0) return 'Every unit can wait for its next planned overhaul.';
  if (unknown === outlooks.length) return 'No unit can be judged: none has a forecast to a limit.';
  return `Every unit with a forecast can wait for its next planned overhaul; ${counted(unknown, 'unit')} without one cannot be judged.`;
}

/** How the day of the paper stands to the records: null if it is their latest day. */
export function daySentence(asOf: string, latest: string): string | null {
  if (asOf === latest) return null;
  return asOf < latest
    ? `Overhauls and readings after ${formatDate(asOf)} are left out. Plan, stock, undated limits and held rows have no history: they are those of the files. The plan names the overhaul after all on record, so that a unit opened since is taken as planned at its interval.`
    : `The latest day in the records is ${formatDate(latest)}: from then on hours are carried forward by the hours a year, and an overhaul planned before the paper’s day counts as not done.`;
}

/** Open signals of the scope in words. */
export function paperDriftSentence({ drift, fleet, scope }: Paper, open: readonly DriftFinding[]): string {
  if (drift.readings > 0 && drift.findings.length === 0 && !isWholeFleet(scope))
    return `No signal among ${counted(fleet.units.length, 'unit')}: nothing moves unlike its own forecast.`;
  return driftSentence(drift, open, fleet.characteristics);
}

/** Cells held of all that came in, and whose verdicts rest on what is left. */
export function heldSentence({ fleet, held }: Paper): string {
  const { readingsIn, readingsHeld } = sumsOf(fleet.files);
  const rows = held.reduce((sum, one) => sum + one.held, 0);
  const of = `of ${counted(readingsIn, 'cell')} for readings in the files, ${formatCount(readingsHeld)} ${readingsHeld === 1 ? 'is' : 'are'} held`;
  const share = readingsIn === 0 ? '' : ` (${formatPercent(readingsHeld / readingsIn, 1)})`;
  if (rows === 0) return `Nothing is held of the units in the scope; ${of}${share}.`;
  const units = held.filter(({ unit }) => unit !== null);
  const lost = units.filter(({ effect }) => effect !== 'forecast without them').length;
  const unknown = held.find(({ unit }) => unit === null)?.held ?? 0;
  const sentences = [
    units.length === 0
      ? 'no unit in the scope is known to have held rows'
      : `${counted(rows - unknown, 'row or cell is', 'rows and cells are')} held of ${counted(units.length, 'unit')} in the scope; ${forecastsLeft(lost, units.length)}`,
    unknown > 0 && `${formatCount(unknown)} held ${unknown === 1 ? 'belongs' : 'belong'} to no known unit`,
    `${of}${share}`,
  ].filter((sentence) => sentence !== false);
  const text = `${sentences.join('; ')}.`;
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** How many units with held rows lack a whole forecast. */
function forecastsLeft(lost: number, units: number): string {
  if (lost === 0) return `${units === 1 ? 'it' : 'each'} still has its forecast, made without them`;
  if (lost === units) return `${units === 1 ? 'it has' : 'they have'} no whole forecast`;
  return `${counted(lost, 'unit has', 'units have')} no whole forecast, ${units - lost === 1 ? 'the other' : 'the others'} one made without them`;
}

const effects: Readonly<Record<HeldEffect, string>> = {
  'unit not known': 'counts for no unit until it is settled',
  'no forecast': 'the unit has no forecast',
  'chance is a lower bound': 'a series has no forecast: the chance is a lower bound',
  'forecast without them': 'the forecast is made without them',
};

/** What held rows do to the verdict on their unit. */
export function effectWords({ effect }: Pick<HeldRows, 'effect'>): string {
  return effects[effect];
}

/** Why rows are held: the reason met most often, and how many others there are. */
export function heldReason({ reason, reasons }: Pick<HeldRows, 'reason' | 'reasons'>): string {
  return reasons === 1 ? reason : `${reason}; and ${counted(reasons - 1, 'other reason')}`;
}

/** Whose orders are listed, and which of them cannot wait for the next look at the stock. */
export function ordersSentence({ scope, spares }: Paper, due: readonly OrderRow[]): string {
  const whose = isWholeFleet(scope)
    ? ''
    : ' Stock and orders are those of the whole fleet, for parts that frames of the scope take; beside them stands the demand of the scope’s own units.';
  const weeks = counted(spares.settings.reviewPeriod_weeks, 'week');
  const urgent =
    due.length === 0
      ? `No order has to be placed within ${weeks}, before the stock is looked at next.`
      : `${counted(due.length, 'order has', 'orders have')} to be placed now or within ${weeks}, before the stock is looked at next: ${namesWords(
          due.map(({ part }) => part),
          mostNamed,
        )}.`;
  return `${urgent}${whose}`;
}
