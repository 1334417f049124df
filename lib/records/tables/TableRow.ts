import type { RowTexts } from '../decisions/tableEdits';

/** A row of a table as it stands: the texts of its cells, where they come from, and why it is not used, if so. */
export interface TableRow {
  /** File that it came from, or the Tables page. */
  readonly file: string;
  /** Line in that file, or number of the entry in the journal. */
  readonly line: number;
  readonly texts: RowTexts;
  readonly isUsed: boolean;
  /** It follows from an answered question and stands in no table, so that it cannot be edited as a row. */
  readonly isDerived: boolean;
  /** Why it, or a cell of it, is held. */
  readonly reasons: readonly string[];
}
