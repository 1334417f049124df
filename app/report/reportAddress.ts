import { isIsoDay } from '../../lib/analysis/isoDate';
import type { PaperSettings } from '../../lib/analysis/report/types';
import { driftSettings } from '../drift/driftAddress';
import { scopeOf } from '../fleet/scopeAddress';
import { sparesSettings } from '../spares/sparesAddress';

/** Days that a paper may be of. */
export const firstDay = '1950-01-01';
export const lastDay = '2150-12-31';

/** Whether a text is a day that a paper may be of, YYYY-MM-DD. */
export function isDay(text: string): boolean {
  return isIsoDay(text) && text >= firstDay && text <= lastDay;
}

/**
 * What the address asks for: scope, day and day of comparison, and the settings of the pages that the paper draws on. What is
 * not understood is as usual; a day of comparison that is not earlier than the paper's own is none.
 *
 * @param latest the latest day in the records
 */
export function paperSettings(query: URLSearchParams, latest: string): PaperSettings {
  const date = query.get('date') ?? '';
  const since = query.get('since') ?? '';
  const asOf = isDay(date) ? date : latest;
  return {
    scope: scopeOf(query),
    asOf,
    since: isDay(since) && since < asOf ? since : null,
    spares: sparesSettings(query),
    drift: driftSettings(query),
  };
}

/** What the Spares page takes from its address. */
export const sparesNames = ['risk', 'service', 'review'];

/** Those of the given names that a query holds. */
export function keptOf(query: URLSearchParams, names: readonly string[]): URLSearchParams {
  return new URLSearchParams(names.flatMap((name) => query.getAll(name).map((value) => [name, value])));
}

/** An address with those of the given names that the query holds: the same view on another page. */
export function sameView(path: string, query: URLSearchParams, names: readonly string[]): string {
  const text = keptOf(query, names).toString();
  return text === '' ? path : `${path}?${text}`;
}
