import { z } from 'zod';
import { canonicalTable } from '../../records/canonicalTables';
import type { EditedTable } from '../../records/decisions/editedTables';
import { tablesPage } from '../../records/decisions/tableEdits';
import type { TableRow } from '../../records/tables/TableRow';
import type { Connector } from '../Connector';
import { queryRows } from '../queryRows';

const rowSchema = z
  .object({
    file: z.string(),
    line: z.int(),
    is_used: z.int(),
    is_derived: z.int(),
    reasons: z.string().nullable(),
  })
  .catchall(z.union([z.string(), z.number()]).nullable());

/** Keeps reasons of one row apart. */
const apart = '\u001f';

/** Every row of a table, held ones included, in order of file and line, edited rows last. */
export async function tableRows(connector: Connector, table: EditedTable): Promise<readonly TableRow[]> {
  const names = canonicalTable(table).columns.map(({ name }) => name);
  const raw = names.map((name) => `"${name}"`).join(', ');
  const typed = names.map((name) => `CAST("${name}" AS VARCHAR) AS "${name}"`).join(', ');
  const rows = await queryRows(
    connector,
    `SELECT t.*, r.reasons FROM (
        SELECT file, line, ((file, line) IN (SELECT (file, line) FROM ${table}))::INTEGER AS is_used, 0 AS is_derived, ${raw} FROM raw_${table}
        UNION ALL
        SELECT file, line::INTEGER, 1, 1, ${typed} FROM ${table} WHERE (file, line) NOT IN (SELECT (file, line) FROM raw_${table})) t
      LEFT JOIN (SELECT file, line, string_agg(DISTINCT reason, chr(31) ORDER BY reason) AS reasons FROM problems WHERE action = 'held' GROUP BY ALL) r USING (file, line)
      ORDER BY t.file = $1, t.file, t.line, ${raw}`,
    rowSchema,
    [tablesPage],
  );
  return rows.map((row) => ({
    file: row.file,
    line: row.line,
    texts: Object.fromEntries(names.map((name) => [name, String(row[name] ?? '')])),
    isUsed: row.is_used === 1,
    isDerived: row.is_derived === 1,
    reasons: row.reasons === null ? [] : row.reasons.split(apart),
  }));
}
