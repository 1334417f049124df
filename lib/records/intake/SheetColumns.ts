import type { Characteristic } from '../characteristics';
import { lineBreakInCell } from '../csv/recordReader';
import type { ColumnMeaning } from './types';

/** Columns of a workshop's sheet: their names and samples, and what they were read as. */
export interface SheetColumns {
  /** See sheetShape. */
  readonly shape: string;
  /** Names as the header gives them. */
  readonly names: readonly string[];
  readonly columns: readonly ColumnMeaning[];
  /** First distinct texts of each column, by its position. */
  readonly samples: readonly (readonly string[])[];
  /** What its readings can be of. */
  readonly characteristics: readonly Characteristic[];
  /** Why decided meanings cannot hold together; empty if they can. */
  readonly faults: readonly string[];
  /** Why nothing was imported from it; null if it was understood. */
  readonly reason: string | null;
}

const samplesShown = 5;
const longestSample = 60;

/** The first few distinct texts of a column, on one line and cut where they are long. */
export function firstDistinct(texts: readonly string[]): readonly string[] {
  const found = new Set<string>();
  for (const text of texts) {
    if (found.size === samplesShown) break;
    const plain = text.replaceAll(String.fromCharCode(lineBreakInCell), ' ').replace(/\s+/g, ' ').trim();
    if (plain !== '') found.add(plain.length > longestSample ? `${plain.slice(0, longestSample)}…` : plain);
  }
  return [...found];
}
