import type { MarginRow } from './types';

/** What the limited series of one unit say together. */
export interface UnitOutlook {
  readonly chanceNow: number | null;
  readonly chanceAtNextOverhaul: number | null;
  /** The margin that is met soonest; without any forecast the first limited margin, so that its reason can be shown. */
  readonly deciding: MarginRow | null;
  /** Series with a limit but no forecast: where there are any, the chances above are lower bounds. */
  readonly withoutForecast: readonly string[];
  /** Limited series with a forecast, the one met soonest first. */
  readonly forecast: readonly MarginRow[];
}

const suffixes = ['largest', 'smallest', 'mean', 'offset'];

/** Characteristics found by lists of codes: a fleet asks for the same few series many thousand times. */
const found = new WeakMap<readonly string[], Map<string, string>>();

/** The characteristic that a series is made from: the longest code that is the series, or the series less its suffix. */
export function characteristicOf(series: string, codes: readonly string[]): string {
  const known = found.get(codes) ?? new Map<string, string>();
  found.set(codes, known);
  const characteristic = known.get(series) ?? longestCode(series, codes);
  known.set(series, characteristic);
  return characteristic;
}

function longestCode(series: string, codes: readonly string[]): string {
  const fits = codes.filter(
    (code) => series === code || suffixes.some((suffix) => series === `${code}_${suffix}`),
  );
  return fits.reduce((longest, code) => (code.length > longest.length ? code : longest), '') || series;
}

/** 1 - product of (1 - p), summed as logarithms so that small chances keep their digits. */
export function anyOf(chances: Iterable<number>): number {
  let logNone = 0;
  for (const chance of chances) logNone += Math.log1p(-Math.min(1, Math.max(0, chance)));
  return 0 - Math.expm1(logNone);
}

/** The largest chance of each characteristic, then 1 - product of (1 - p) over them; null without any chance. */
function combined<Margin extends Pick<MarginRow, 'series'>>(
  margins: readonly Margin[],
  codes: readonly string[],
  chance: (margin: Margin) => number | null,
): number | null {
  const largest = new Map<string, number>();
  for (const margin of margins) {
    const value = chance(margin);
    if (value === null) continue;
    const code = characteristicOf(margin.series, codes);
    largest.set(code, Math.max(largest.get(code) ?? 0, value));
  }
  return largest.size === 0 ? null : anyOf(largest.values());
}

function hasForecast(margin: MarginRow): boolean {
  return margin.chanceNow !== null || margin.chanceByQuarter.length > 0;
}

/** A chance as it is compared and read, in whole percents: under 1 % all are alike; -1 if there is none. */
export function wholePercents(chance: number | null): number {
  if (chance === null) return -1;
  return chance < 0.01 ? 0 : Math.round(100 * chance);
}

/** Order of margins: the larger chance at the next overhaul, then the sooner early date, then the larger chance now. */
function bySoonest(a: MarginRow, b: MarginRow): number {
  const atNext = wholePercents(b.chanceAtNextOverhaul) - wholePercents(a.chanceAtNextOverhaul);
  if (atNext !== 0) return atNext;
  const early = (a.hoursEarly ?? Number.MAX_VALUE) - (b.hoursEarly ?? Number.MAX_VALUE);
  if (early !== 0) return early;
  return (b.chanceNow ?? -1) - (a.chanceNow ?? -1);
}

/**
 * Chance that a unit meets its first limit: per characteristic the largest of its series' chances (they share their
 * readings), then 1 - product of (1 - p) over characteristics (taken as independent).
 *
 * Takes the margins of one unit and the codes of the known characteristics; margins without a limit are left out.
 */
export function combineChances(margins: readonly MarginRow[], codes: readonly string[]): UnitOutlook {
  const limited = margins.filter((margin) => margin.limit_mm !== null);
  const forecast = limited.filter(hasForecast).sort(bySoonest);
  return {
    chanceNow: combined(forecast, codes, (margin) => margin.chanceNow),
    chanceAtNextOverhaul: combined(forecast, codes, (margin) => margin.chanceAtNextOverhaul),
    deciding: forecast[0] ?? limited[0] ?? null,
    withoutForecast: [
      ...new Set(limited.filter((margin) => !hasForecast(margin)).map((margin) => margin.series)),
    ],
    forecast,
  };
}

/** The same chance on each of the quarters that the margins state; empty if no limited series has a forecast by date. */
export function chanceByQuarter({ forecast }: UnitOutlook, codes: readonly string[]): readonly number[] {
  // A margin may make its list anew whenever it is asked for it.
  const drawn = forecast
    .map((margin) => ({ series: margin.series, chances: margin.chanceByQuarter }))
    .filter(({ chances }) => chances.length > 0);
  const quarters = drawn[0]?.chances ?? [];
  return quarters.map((_, quarter) => combined(drawn, codes, ({ chances }) => chances[quarter] ?? null) ?? 0);
}
