import type { TableName } from '../records/canonicalTables';
import type { Connector } from './Connector';
import { releaseDoubtfulSql } from './rulings/releaseDoubtful';

/**
 * Moves rows from a typed table to the problems: the question returns id, column_name, raw and reason. Returns the number of
 * rows that the question returned.
 *
 * @param isDoubt SQL condition on the question's row: it can be read and is only doubted, so that a person may release it
 */
export async function holdRows(
  connector: Connector,
  table: TableName,
  questionSql: string,
  isDoubt = 'false',
): Promise<number> {
  const found = await connector.change(`CREATE OR REPLACE TABLE found_rows AS ${questionSql}`);
  // Joined only where there are any: with none the join alone would take longer than most questions.
  if (found > 0) await connector.run(`${doubtfulSql(table, isDoubt)}; ${moveDoubtfulSql(table)}`);
  return found;
}

function doubtfulSql(table: TableName, isDoubt: string): string {
  return `CREATE OR REPLACE TABLE doubtful AS
      SELECT d.id, t.file, t.line, d.column_name, coalesce(o.raw, d.raw, '') AS raw, d.reason, ${isDoubt} AS is_doubt
      FROM found_rows d JOIN ${table} t USING (id)
      LEFT JOIN own_texts o ON o.file = t.file AND o.line = t.line AND o.column_name = d.column_name`;
}

function moveDoubtfulSql(table: TableName): string {
  const kept =
    table === 'readings'
      ? 'INSERT INTO held_readings SELECT file, line, value_column, overhaul FROM readings WHERE id IN (SELECT id FROM doubtful);'
      : '';
  return `${releaseDoubtfulSql(table)};
    INSERT INTO doubts SELECT DISTINCT file, line, column_name FROM doubtful WHERE is_doubt;
    INSERT INTO problems SELECT '${table}', file, line, column_name, raw, reason, 'held' FROM doubtful;
    ${kept}
    DELETE FROM ${table} WHERE id IN (SELECT id FROM doubtful)`;
}
