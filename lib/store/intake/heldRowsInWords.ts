import { group } from 'd3-array';
import type { Connector } from '../Connector';
import type { LoadedFile } from '../loadFile';

/** Examples named in a sentence. */
const examples = 4;

/** Overhauls held for their date or hours, what waits for an answer left out, by kind with the first few of each. */
const heldForDateOrHoursSql = `
  WITH held AS (
    SELECT DISTINCT p.file, p.line, trim(coalesce(c.raw, p.raw)) AS raw,
      CASE WHEN p.column_name = 'unit_hours' THEN 'hours' WHEN trim(coalesce(c.raw, p.raw)) = '' THEN 'no date' ELSE 'date' END AS kind
    FROM problems p LEFT JOIN cell_reasons c ON c.file = p.file AND c.line = p.line AND c.column_name = p.column_name
    WHERE p.action = 'held' AND p.table_name = 'overhauls' AND coalesce(c.reason, '') NOT LIKE 'waits for%'
      AND (p.column_name = 'date' OR (p.column_name = 'unit_hours' AND p.reason LIKE 'neither unit_hours%'))),
  counted AS (SELECT *, count(*) OVER (PARTITION BY file, kind) AS n, row_number() OVER (PARTITION BY file, kind ORDER BY line) AS place FROM held)
  SELECT file, kind, n::INTEGER AS n, line::INTEGER AS line, raw FROM counted WHERE place <= ${examples} ORDER BY file, kind, line`;

const why: Readonly<Record<string, string>> = {
  date: 'for a date that is not in the calendar or cannot be read',
  hours: 'since the hours are missing or cannot be read',
  'no date': 'since the date is missing',
};

/**
 * Adds to the message of each sheet how many rows are held for their dates and hours, and where: nobody can answer what the
 * workshop alone knows, so they are listed together, to be asked there and corrected in the file. Before ownReasonsSql.
 */
export async function withHeldRowsInWords(
  connector: Connector,
  loaded: readonly LoadedFile[],
  sheets: ReadonlySet<string>,
): Promise<readonly LoadedFile[]> {
  if (sheets.size === 0) return loaded;
  const rows = await connector.query(heldForDateOrHoursSql);
  const ofFile = group(rows, (row) => String(row.file));
  return loaded.map((file) => {
    const held = sheets.has(file.name) ? ofFile.get(file.name) : undefined;
    if (held === undefined) return file;
    const sentences = [...group(held, (row) => String(row.kind))].map(([kind, ofKind]) => {
      const n = Number(ofKind[0]?.n);
      const named = ofKind.map(({ line, raw }) => (raw === '' ? `line ${line}` : `‘${raw}’ in line ${line}`));
      const rest = n > ofKind.length ? ` and ${n - ofKind.length} more` : '';
      return `${n} ${n === 1 ? 'row is' : 'rows are'} held ${why[kind]}: ${named.join(', ')}${rest}.`;
    });
    return {
      ...file,
      message: [file.message, ...sentences, 'Correct them in the file.']
        .filter((part) => part !== null)
        .join(' '),
    };
  });
}
