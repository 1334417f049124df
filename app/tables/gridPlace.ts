/** A cell of the grid, from 0. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** Rows that a page key moves by: fewer than are drawn beyond the view. */
const pageRows = 10;

const steps: Readonly<Record<string, readonly [rows: number, columns: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
  PageUp: [-pageRows, 0],
  PageDown: [pageRows, 0],
  Home: [0, Number.NEGATIVE_INFINITY],
  End: [0, Number.POSITIVE_INFINITY],
};

/** The cell that a key moves to, kept within the grid; null for any other key. */
export function placeAfter(key: string, { row, column }: Place, rows: number, columns: number): Place | null {
  const step = steps[key];
  return step === undefined ? null : within({ row: row + step[0], column: column + step[1] }, rows, columns);
}

/** The cell nearest to a place. */
export function within({ row, column }: Place, rows: number, columns: number): Place {
  const clamp = (value: number, count: number) => Math.max(0, Math.min(count - 1, value));
  return { row: clamp(row, rows), column: clamp(column, columns) };
}
