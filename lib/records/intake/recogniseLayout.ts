import { byteOfLine } from './layout/byteOfLine';
import { columnNames } from './layout/columnNames';
import { type SampleRecord, sampleRecords } from './layout/sampleRecords';
import { bestCut, cutBy, delimiters, type SheetCut, singleColumn } from './layout/sheetCut';
import type { SheetLayout } from './types';

const mostColumns = 4096;
const delimiterNames = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'vertical bar' } as const;

/**
 * Finds how a sheet (UTF-8 without byte order mark) is cut: delimiter, lines before the header, header rows, column names.
 *
 * Looks at the first 200 records. Names are kept as they stand, repeated or empty ones too. Gives a reason if there is no header.
 */
export function recogniseLayout(bytes: Uint8Array): SheetLayout | { readonly reason: string } {
  const [firstRecord] = sampleRecords(bytes, ',', 1);
  if (firstRecord === undefined)
    return { reason: 'the file holds no line with anything in it: export the sheet again' };
  const stated = statedDelimiter(bytes);
  const fromLine = stated === null ? 1 : 2;
  const fromStatement = stated === null ? null : cutBy(bytes, stated, fromLine);
  const cut = fromStatement ?? bestCut(bytes, fromLine) ?? singleColumn(bytes, fromLine);
  if (cut === null) return { reason: noHeader(bytes, fromLine) };
  if (cut.width > mostColumns)
    return { reason: `the header has ${cut.width} cells, more than ${mostColumns}: not an overhaul sheet` };
  const header = cut.records.slice(cut.header.first, cut.header.end);
  const top = header[0] as SampleRecord;
  const bottom = header[header.length - 1] as SampleRecord;
  const { names, title } = columnNames(
    header.map((record) => record.cells),
    cut.header.firstColumnIsValue,
  );
  const evidence = [
    delimiterEvidence(cut, fromStatement !== null),
    ...preambleEvidence(cut, top.line),
    headerEvidence(cut, top.line, bottom.nextLine - 1),
    ...(title === null
      ? []
      : [`'${short(title)}' in the first cell of line ${top.line} is read as the sheet's title`]),
  ];
  return {
    delimiter: cut.delimiter,
    preambleLines: top.line - 1,
    headerRecords: header.length,
    firstBodyLine: bottom.nextLine,
    columns: names,
    evidence,
  };
}

/** Delimiter that a spreadsheet's first line `sep=;` states, or null. */
function statedDelimiter(bytes: Uint8Array): SheetLayout['delimiter'] | null {
  const line = new TextDecoder().decode(bytes.subarray(0, Math.min(byteOfLine(bytes, 2), 20)));
  const sign = /^"?sep=(.)"?\s*$/i.exec(line)?.[1];
  return delimiters.find((delimiter) => delimiter === sign) ?? null;
}

function noHeader(bytes: Uint8Array, fromLine: number): string {
  const [first] = sampleRecords(bytes, ';', fromLine);
  if (first === undefined) return 'the file holds nothing but its sep= line: export the sheet again';
  return `no line with column names was found above the values (line ${first.line}: '${short(first.cells.join(';'))}'): put one above them`;
}

function delimiterEvidence(cut: SheetCut, isStated: boolean): string {
  const lines = `${cut.fitting} of ${cut.records.length} lines looked at`;
  if (cut.width === 1) return `One column: no delimiter parts the lines alike (${lines})`;
  const name = delimiterNames[cut.delimiter];
  const said = isStated ? `Line 1 states the delimiter: ${name}` : `Delimiter ${name}`;
  return `${said}; ${lines} have ${cut.width} cells as the header has`;
}

function preambleEvidence(cut: SheetCut, headerLine: number): readonly string[] {
  if (headerLine === 1) return [];
  const first = cut.header.first > 0 ? cut.records[0] : undefined;
  const lines = headerLine === 2 ? 'Line 1 stands' : `Lines 1 to ${headerLine - 1} stand`;
  const text = first === undefined ? '' : `: '${short(first.cells.filter((cell) => cell !== '').join(' '))}'`;
  return [`${lines} before the header${text}`];
}

function headerEvidence(cut: SheetCut, first: number, last: number): string {
  const records = cut.header.end - cut.header.first;
  const lines = first === last ? `Line ${first} is the header` : `Lines ${first} to ${last} are the header`;
  const rows = records === 1 ? '' : ` (${records} rows, joined from top to bottom)`;
  const why = cut.header.hasValuesBelow
    ? 'words above lines with numbers or dates'
    : 'the first line with a name for most columns';
  return `${lines}${rows}: ${why}`;
}

function short(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
