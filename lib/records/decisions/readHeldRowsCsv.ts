import { normaliseBody, readHeader } from '../csv/normaliseCsv';
import { fromSpreadsheet } from '../csv/spreadsheetText';
import type { InputFile } from '../importReport';
import { decodeText } from '../intake/decodeText';
import { recogniseLayout } from '../intake/recogniseLayout';
import type { SheetLayout } from '../intake/types';
import type { RulingDecision } from './Decision';
import { heldRowsColumns } from './heldRowsCsv';
import { rulingId } from './rulings';

/** A ruling with the line of the corrected file that gives it. */
export interface GivenRuling {
  readonly line: number;
  readonly ruling: RulingDecision;
}

/** What a corrected file of held rows says. */
export interface CorrectedRows {
  readonly file: string;
  readonly given: readonly GivenRuling[];
  /** Lines that cannot be taken, and why. */
  readonly faults: readonly { readonly line: number; readonly reason: string }[];
  /** Lines without a correction and without a ruling. */
  readonly untouched: number;
}

type Column = (typeof heldRowsColumns)[number];
type Cells = Readonly<Record<Column, string>>;

const delimiters = [',', ';', '\t', '|'] as const;
const needed: readonly Column[] = ['file', 'line', 'column', 'raw', 'corrected', 'ruling'];
const rulings: Readonly<Record<string, RulingDecision['ruling']>> = {
  edit: 'edit',
  release: 'release',
  'leave out': 'leave out',
};
const decimalComma = /^[+-]?\d+,\d+$/;

/** True for a header with the columns of the file of held rows, in any order. */
function isHeldRows(header: readonly string[]): boolean {
  return needed.every((name) => header.includes(name));
}

const tidyNames = (names: readonly string[]) => names.map((name) => name.trim().toLowerCase());

/**
 * Reads the file that heldRowsCsv wrote, after any spreadsheet has saved it: in any usual encoding, with comma, semicolon or tab,
 * decimal comma, columns moved or added. Null if it is another file.
 *
 * @param by initials under which its rulings are given
 */
export function readHeldRowsCsv({ name, bytes }: InputFile, by: string): CorrectedRows | null {
  const decoded = decodeText(bytes);
  if ('reason' in decoded) return null;
  const form = formOf(decoded.bytes);
  if (form === null) return null;
  const header = tidyNames(form.columns);
  const csv = normaliseBody(decoded.bytes, form.delimiter, form.firstBodyLine, header);
  const given = new Map<string, GivenRuling>();
  const faults = csv.held.map(({ row, reason }) => ({ line: row, reason }));
  let untouched = 0;
  for (const record of new TextDecoder().decode(csv.body).split('\n')) {
    if (record === '') continue;
    const [line = '', ...texts] = record.split('\u001f').map((text) => text.replaceAll('\u001e', '\n'));
    const cell = (column: Column) => fromSpreadsheet((texts[header.indexOf(column)] ?? '').trim());
    const cells = Object.fromEntries(heldRowsColumns.map((column) => [column, cell(column)])) as Cells;
    const read = rulingOf(cells, form.delimiter, { by, reason: `as corrected in ${name}, line ${line}` });
    if (read === null) untouched++;
    else if ('fault' in read) faults.push({ line: Number(line), reason: read.fault });
    else {
      const before = given.get(read.id);
      const isOther = before !== undefined && !rulesAlike(before.ruling, read);
      if (isOther) faults.push({ line: Number(line), reason: `ruled otherwise in line ${before.line}` });
      else if (before === undefined) given.set(read.id, { line: Number(line), ruling: read });
    }
  }
  return {
    file: name,
    given: [...given.values()],
    faults: faults.sort((a, b) => a.line - b.line),
    untouched,
  };
}

/** How a file of held rows is cut, or null if it is none. */
function formOf(bytes: Uint8Array): Pick<SheetLayout, 'delimiter' | 'firstBodyLine' | 'columns'> | null {
  for (const delimiter of delimiters) {
    const columns = readHeader(bytes, delimiter);
    if (isHeldRows(tidyNames(columns))) return { delimiter, columns, firstBodyLine: 2 };
  }
  // A line above the header, such as a spreadsheet's own note of the delimiter.
  const layout = recogniseLayout(bytes.subarray(0, 300_000));
  return 'reason' in layout || !isHeldRows(tidyNames(layout.columns)) ? null : layout;
}

function rulesAlike(one: RulingDecision, other: RulingDecision): boolean {
  return one.ruling === other.ruling && one.text === other.text;
}

function rulingOf(
  cells: Cells,
  delimiter: string,
  given: { readonly by: string; readonly reason: string },
): RulingDecision | { readonly fault: string } | null {
  const word = cells.ruling.toLowerCase().replaceAll(/\s+/g, ' ');
  if (word === '' && cells.corrected === '') return null;
  const ruling = rulings[word === '' ? 'edit' : word];
  if (ruling === undefined)
    return { fault: `the ruling ‘${cells.ruling}’ is none of edit, release, leave out` };
  if (ruling === 'edit' && cells.corrected === '')
    return { fault: 'the ruling is edit and the cell ‘corrected’ is empty: give the right text' };
  if (ruling !== 'edit' && cells.corrected !== '')
    return { fault: `a corrected text and the ruling ‘${ruling}’ contradict each other: give one of them` };
  const line = Number(cells.line.replace(/[.,]0+$/, ''));
  if (!Number.isSafeInteger(line) || line < 1 || cells.file === '')
    return { fault: `file ‘${cells.file}’ and line ‘${cells.line}’ name no held row` };
  const place = { file: cells.file, line, column: cells.column };
  return {
    kind: 'ruling',
    id: rulingId(place),
    ...place,
    raw: cells.raw,
    ruling,
    text: ruling === 'edit' ? plainNumber(cells.corrected, delimiter) : null,
    reason: cells.why === '' ? given.reason : cells.why,
    by: given.by,
  };
}

/** Semicolons come with a decimal comma; one more digit keeps three decimals from being read as thousands elsewhere. */
function plainNumber(text: string, delimiter: string): string {
  if (delimiter !== ';' || !decimalComma.test(text)) return text;
  return `${text.replace(',', '.')}${/,\d{3}$/.test(text) ? '0' : ''}`;
}
