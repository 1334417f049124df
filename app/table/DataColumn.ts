import type { ReactNode } from 'react';

export type CellValue = string | number | null;

/** One column: the value that sorts it, and how a cell is written. */
export interface DataColumn<Data> {
  readonly id: string;
  readonly header: string;
  readonly value: (row: Data) => CellValue;
  readonly cell?: (row: Data) => ReactNode;
  /** Right-aligned tabular figures. */
  readonly numeric?: boolean;
  /** The cell that names its row. */
  readonly rowHeader?: boolean;
  /** Long text, which may wrap. */
  readonly text?: boolean;
}
