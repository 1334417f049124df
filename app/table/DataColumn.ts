import type { ReactNode } from 'react';
import type { TermName } from '../words/terms';

export type CellValue = string | number | null;

/** A column of a saved or copied table: bare numbers, whose unit the head names. */
export interface SavedColumn<Data> {
  readonly header: string;
  readonly value: (row: Data) => CellValue;
}

/** One column: the value that sorts it, and how a cell is written. */
export interface DataColumn<Data> {
  readonly id: string;
  readonly header: string;
  /** The term that the head explains, if it is one. */
  readonly term?: TermName;
  readonly value: (row: Data) => CellValue;
  readonly cell?: (row: Data) => ReactNode;
  /** Right-aligned tabular figures. */
  readonly numeric?: boolean;
  /** The value is an ISO date. */
  readonly date?: boolean;
  /** The cell that names its row. */
  readonly rowHeader?: boolean;
  /** Text that may wrap; 'long' gets room, where several sentences would make a row tall. */
  readonly text?: boolean | 'long';
  /** Unit of the value, where the head does not name it: what a saved table adds to it. */
  readonly unit?: string;
  /** What a saved table has in place of the value: several columns, or none. */
  readonly saved?: readonly SavedColumn<Data>[];
}
