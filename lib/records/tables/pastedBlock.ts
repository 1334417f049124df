import { dsvFormat } from 'd3-dsv';
import { canonicalTable } from '../canonicalTables';
import type { EditedTable } from '../decisions/editedTables';
import { type Draft, type DraftRow, mayEdit, withAddedRows } from './tableDraft';

const tabs = dsvFormat('\t');

/** A text of a pasted block that found no cell. */
export interface NotFitting {
  /** Line of the block, from 1. */
  readonly line: number;
  readonly text: string;
  readonly why: 'right of the last column' | 'in a row that cannot be edited';
}

/** The cells of a block that a spreadsheet put on the clipboard; a line break at its end starts no line. */
export function blockOf(pasted: string): readonly (readonly string[])[] {
  return tabs.parseRows(pasted.replace(/\r\n?/g, '\n').replace(/\n$/, ''));
}

/**
 * The draft with a block of texts in the cells from one on, to the right and downwards; rows are added where the block goes on
 * beyond the last one. What finds no cell is listed.
 *
 * @param from index of the first row, and of its column
 */
export function withBlock(
  table: EditedTable,
  draft: Draft,
  from: { readonly row: number; readonly column: number },
  block: readonly (readonly string[])[],
): { readonly draft: Draft; readonly notFitting: readonly NotFitting[] } {
  const { columns } = canonicalTable(table);
  const missing = Math.max(0, from.row + block.length - draft.length);
  const rows = [...withAddedRows(draft, missing)];
  const notFitting: NotFitting[] = [];
  for (const [line, cells] of block.entries()) {
    const row = rows[from.row + line] as DraftRow;
    const texts: Record<string, string> = {};
    for (const [place, written] of cells.entries()) {
      const text = written.trim();
      const column = columns[from.column + place];
      if (column !== undefined && mayEdit(row)) texts[column.name] = text;
      else if (text !== '')
        notFitting.push({
          line: line + 1,
          text,
          why: column === undefined ? 'right of the last column' : 'in a row that cannot be edited',
        });
    }
    rows[from.row + line] = { ...row, texts: { ...row.texts, ...texts } };
  }
  return { draft: rows, notFitting };
}
