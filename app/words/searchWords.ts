import type { UnitRow } from '../../lib/analysis/types';
import { counted } from './counted';

/**
 * What a search for a unit came to.
 *
 * @param shown units listed, of those found
 */
export function searchWords(typed: string, found: number, shown: number): string {
  if (found === 0)
    return `No unit matches ‘${typed.trim()}’: type letters or digits of its serial or engine.`;
  if (found > shown) return `${counted(found, 'unit')} match; the first ${shown} are listed.`;
  return `${counted(found, 'unit')} ${found === 1 ? 'matches' : 'match'}.`;
}

/** Why nothing can be searched yet. */
export function nothingToSearch(beingOpened: boolean): string {
  return beingOpened
    ? 'The fleet is being opened; units are found here as soon as it is.'
    : 'No fleet is open: open one on the Records page to find its units here.';
}

/** Where a unit is found, to tell it from others. */
export function placeWords({ frame, site, engine, bank }: UnitRow): string {
  return [frame, site, engine, bank].filter((part) => part !== null && part !== '').join(', ');
}
