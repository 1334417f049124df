import { normaliseCsv } from '../../../../lib/records/csv/normaliseCsv';
import { decodeText } from '../../../../lib/records/intake/decodeText';
import { type BodyLineKind, bodyLineKind } from '../../../../lib/records/intake/layout/bodyLineKind';
import { byteOfLine } from '../../../../lib/records/intake/layout/byteOfLine';
import { recogniseLayout } from '../../../../lib/records/intake/recogniseLayout';
import type { DecodedText, SheetLayout } from '../../../../lib/records/intake/types';

export interface ReadLine {
  readonly line: number;
  readonly kind: BodyLineKind;
  readonly cells: readonly string[];
}

export interface ReadSheet {
  readonly decoded: DecodedText;
  readonly layout: SheetLayout;
  readonly lines: readonly ReadLine[];
  readonly rowsIn: number;
  readonly records: number;
  readonly held: number;
}

const decoder = new TextDecoder();

/** Takes a file's bytes through decodeText, recogniseLayout, normaliseCsv and bodyLineKind, or gives the reason for the refusal. */
export function readSheet(bytes: Uint8Array): ReadSheet | { readonly reason: string } {
  const decoded = decodeText(bytes);
  if ('reason' in decoded) return decoded;
  const layout = recogniseLayout(decoded.bytes);
  if ('reason' in layout) return layout;
  const { preambleLines, firstBodyLine, delimiter } = layout;
  const csv = normaliseCsv(decoded.bytes.subarray(byteOfLine(decoded.bytes, preambleLines + 1)), delimiter);
  const text = decoder.decode(csv.body);
  const lines = text === '' ? [] : text.slice(0, -1).split('\n');
  const read = lines.map((line): ReadLine => {
    const [number, ...cells] = line.split('\u001f');
    return { line: Number(number) + preambleLines, kind: bodyLineKind(cells, layout), cells };
  });
  return {
    decoded,
    layout,
    lines: read.filter(({ line }) => line >= firstBodyLine),
    rowsIn: csv.rowsIn,
    records: csv.records,
    held: csv.held.length,
  };
}

/** A sheet that must be readable. */
export function mustRead(bytes: Uint8Array): ReadSheet {
  const sheet = readSheet(bytes);
  if ('reason' in sheet) throw new Error(`mustRead requires a readable sheet, got: ${sheet.reason}`);
  return sheet;
}
