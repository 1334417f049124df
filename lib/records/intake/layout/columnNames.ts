import { isUnitsRow } from './findHeader';

/** Names of the columns, and the title that stood in the first cell of a header row, if one did. */
export interface ColumnNames {
  readonly names: readonly string[];
  readonly title: string | null;
}

interface Span {
  readonly column: number;
  readonly end: number;
}

/**
 * Joins header rows from top to bottom with ' / '.
 *
 * A cell reaches over the empty cells to its right as long as the row below has names there, beginning under the cell itself.
 * The last of several groups ends where the one before it ended, if it begins with the same names. A first cell over columns that
 * need no group to be told apart is the sheet's title, not part of their names.
 */
export function columnNames(rows: readonly (readonly string[])[], firstColumnIsValue: boolean): ColumnNames {
  const width = Math.max(...rows.map((row) => row.length));
  const filled = rows.map((row) => Array.from({ length: width }, (_, column) => row[column] ?? ''));
  let title: string | null = null;
  for (let level = rows.length - 2; level >= 0; level--) {
    const upper = filled[level] as string[];
    const lower = filled[level + 1] as string[];
    if (isUnitsRow({ cells: lower })) continue;
    const spans = spansOf(upper, lower);
    for (const span of spans) upper.fill(upper[span.column] as string, span.column, span.end);
    const [first] = spans;
    if (level === 0 && !firstColumnIsValue && first !== undefined && isTitleSpan(first, spans, lower)) {
      title = upper[0] as string;
      upper.fill('', 0, first.end);
    }
  }
  const names = Array.from({ length: width }, (_, column) => {
    const parts = filled.map((row) => row[column] as string).filter((part) => part !== '');
    return parts.filter((part, index) => part !== parts[index - 1]).join(' / ');
  });
  return { names, title };
}

/** Cells of the upper row with names under them, and how far each reaches. */
function spansOf(upper: readonly string[], lower: readonly string[]): readonly Span[] {
  const spans: Span[] = [];
  for (let column = 0; column < upper.length; column++) {
    if (upper[column] === '' || lower[column] === '') continue;
    let end = column + 1;
    while (end < upper.length && upper[end] === '' && lower[end] !== '') end++;
    spans.push({ column, end });
  }
  const [before, last] = spans.slice(-2);
  if (before === undefined || last === undefined) return spans;
  const length = before.end - before.column;
  const repeats =
    length > 1 &&
    lower.slice(before.column, before.end).every((name, at) => name === lower[last.column + at]);
  if (repeats)
    spans[spans.length - 1] = { column: last.column, end: Math.min(last.end, last.column + length) };
  return spans;
}

function isTitleSpan(first: Span, spans: readonly Span[], lower: readonly string[]): boolean {
  if (first.column !== 0 || first.end === 1 || spans.length < 2) return false;
  const own = lower.slice(0, first.end);
  return new Set(own).size === own.length && own.every((name) => !lower.slice(first.end).includes(name));
}
