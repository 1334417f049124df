import type { TableName } from '../../records/canonicalTables';
import { quoted } from '../sql/quoted';

/**
 * Takes out of `doubtful` the rows that a person released, and lists each as interpreted; what cannot be read at all stays.
 * A release of a whole line covers every doubt about its cells.
 */
export function releaseDoubtfulSql(table: TableName): string {
  return `CREATE OR REPLACE TABLE released AS
      SELECT DISTINCT d.id, r.id AS ruling, d.file, d.line, coalesce(nullif(r.column_name, ''), d.column_name) AS column_name, d.raw,
        'used as it stands: ' || signed_reason(r.reason, r.by_whom) || '. In doubt: ' || d.reason AS reason
      FROM doubtful d JOIN record_rulings r ON r.ruling = 'release' AND r.file = d.file AND r.line = d.line
      WHERE d.is_doubt AND r.is_same IS DISTINCT FROM false AND (r.column_name = '' OR (r.record_column = d.column_name AND same_text(r.raw, d.raw)));
    INSERT INTO problems SELECT '${table}', file, line, column_name, raw, reason, 'interpreted' FROM released;
    UPDATE rulings SET applied = true WHERE id IN (SELECT ruling FROM released);
    DELETE FROM doubtful WHERE id IN (SELECT id FROM released);
    DROP TABLE released`;
}

/** Keeps the lines that a person released out of `dropped_lines`, and notes the others as doubts. */
export function releaseLinesSql(file: string): string {
  const released = `r.ruling = 'release' AND r.column_name = '' AND r.is_same AND r.file = ${quoted(file)}`;
  return `DELETE FROM dropped_lines d WHERE EXISTS (SELECT 1 FROM rulings r WHERE ${released} AND r.line = d.line::INTEGER);
    INSERT INTO doubts SELECT ${quoted(file)}, line::INTEGER, '' FROM dropped_lines;`;
}
