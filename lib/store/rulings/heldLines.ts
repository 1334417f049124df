import { dsvFormat } from 'd3-dsv';
import type { CutCsv } from '../../records/csv/cutCsv';
import { cellsApart } from '../../records/csv/normaliseCsv';
import { replaceRecords } from '../../records/csv/replaceRecords';
import type { Connector } from '../Connector';
import type { LoadedFile } from '../loadFile';
import { quoted } from '../sql/quoted';

const encoder = new TextEncoder();

/**
 * Cuts a file into cells, with the edited text of lines that could not be cut in place of theirs, where these are still the same.
 *
 * @param cut cuts the bytes; called again if a line was edited
 */
export async function cutWithEdits(
  connector: Connector,
  file: string,
  bytes: Uint8Array,
  delimiter: string,
  cut: (bytes: Uint8Array) => Promise<CutCsv>,
): Promise<CutCsv> {
  const asItStands = await cut(bytes);
  if (asItStands.held.length === 0) return asItStands;
  const rows = await connector.query(
    `SELECT id, line, raw, text FROM rulings WHERE ruling = 'edit' AND column_name = '' AND file = $1`,
    [file],
  );
  const texts = new Map<number, string>();
  for (const { id, line, raw, text } of rows) {
    const held = asItStands.held.find((one) => one.row === Number(line));
    if (held === undefined) continue;
    const isSame = tidy(held.raw) === tidy(String(raw));
    if (isSame) texts.set(held.row, lineText(String(text), delimiter));
    await connector.run(
      `UPDATE rulings SET found = ${quoted(held.raw)}, applied = ${isSame} WHERE id = ${quoted(String(id))}`,
    );
  }
  if (texts.size === 0) return asItStands;
  await connector.run(`INSERT INTO problems SELECT 'ruling', file, line, '', found, 'the line is read as ‘' || text || '’: ' || signed_reason(reason, by_whom), 'interpreted'
    FROM rulings WHERE ruling = 'edit' AND column_name = '' AND applied AND file = ${quoted(file)}`);
  return cut(replaceRecords(bytes, delimiter, texts));
}

function tidy(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim();
}

/** An edited line as the file would write it: cells may be kept apart as the problems list shows them. */
function lineText(text: string, delimiter: string): string {
  return text.includes(cellsApart.trim())
    ? dsvFormat(delimiter).formatRow(text.split(cellsApart.trim()).map((cell) => cell.trim()))
    : text;
}

/** Lists the lines of a file that could not be cut into cells. */
export async function listHeldLines(connector: Connector, { name, held }: LoadedFile): Promise<void> {
  if (held.length === 0) return;
  const body = held.map((line) => [line.row, line.raw, line.reason].join('\u001f')).join('\n');
  await connector.loadText('held_lines', ['line', 'raw', 'reason'], encoder.encode(`${body}\n`));
  await connector.run(`INSERT INTO problems SELECT 'line', ${quoted(name)}, line::INTEGER, '', coalesce(raw, ''), reason, 'held' FROM held_lines;
    DROP TABLE held_lines`);
}
