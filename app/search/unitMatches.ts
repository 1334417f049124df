import type { UnitRow } from '../../lib/analysis/types';

/** A unit with its serial and its engine as they are compared with what is typed. */
export interface SearchedUnit {
  readonly unit: UnitRow;
  readonly serial: string;
  readonly engine: string;
}

/** The units that fit best, and how many fit at all. */
export interface UnitMatches {
  readonly shown: readonly UnitRow[];
  readonly found: number;
}

const plain = /^[ -~]*$/;

/** Letters and digits only, small and without accents: whether a serial is typed with its hyphens must not matter. */
function folded(text: string): string {
  // Nearly all names are plain, and ten thousand of them are made ready between two keys.
  if (plain.test(text)) return text.toLowerCase().replace(/[^a-z0-9]/g, '');
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}

/** Units made ready to be searched, once a fleet and not once a key. */
export function searchedUnits(units: readonly UnitRow[]): readonly SearchedUnit[] {
  return units.map((unit) => ({ unit, serial: folded(unit.unit), engine: folded(unit.engine ?? '') }));
}

/** How well a unit fits, 0 best; null where it does not. */
function rankOf({ serial, engine }: SearchedUnit, typed: string): number | null {
  if (serial === typed) return 0;
  if (serial.startsWith(typed)) return 1;
  if (engine.startsWith(typed)) return 2;
  if (serial.includes(typed)) return 3;
  return engine.includes(typed) ? 4 : null;
}

const ranks = [0, 1, 2, 3, 4] as const;

/**
 * Units whose serial or engine holds what was typed: the serial itself first, then serials and engines that begin with it,
 * then those that hold it elsewhere; in the order given within each. Nothing typed fits nothing.
 *
 * @param most units shown at most
 */
export function unitMatches(units: readonly SearchedUnit[], text: string, most: number): UnitMatches {
  const typed = folded(text);
  if (typed === '') return { shown: [], found: 0 };
  const byRank: UnitRow[][] = ranks.map(() => []);
  for (const one of units) {
    const rank = rankOf(one, typed);
    if (rank !== null) byRank[rank]?.push(one.unit);
  }
  const fitting = byRank.flat();
  return { shown: fitting.slice(0, most), found: fitting.length };
}
