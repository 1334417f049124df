import type { TableName } from '../records/canonicalTables';
import type { Connector } from './Connector';
import { releaseDoubtfulSql } from './rulings/releaseDoubtful';

/**
 * Moves rows from a typed table to the problems: the question returns id, column_name, raw and reason.
 *
 * @param isDoubt SQL condition on the question's row: it can be read and is only doubted, so that a person may release it
 */
export async function holdRows(
  connector: Connector,
  table: TableName,
  questionSql: string,
  isDoubt = 'false',
): Promise<void> {
  await connector.run(`CREATE OR REPLACE TABLE doubtful AS
      SELECT d.id, t.file, t.line, d.column_name, coalesce(o.raw, d.raw, '') AS raw, d.reason, ${isDoubt} AS is_doubt
      FROM (${questionSql}) d JOIN ${table} t USING (id)
      LEFT JOIN own_texts o ON o.file = t.file AND o.line = t.line AND o.column_name = d.column_name;
    ${releaseDoubtfulSql(table)};
    INSERT INTO doubts SELECT DISTINCT file, line, column_name FROM doubtful WHERE is_doubt;
    INSERT INTO problems SELECT '${table}', file, line, column_name, raw, reason, 'held' FROM doubtful;
    DELETE FROM ${table} WHERE id IN (SELECT id FROM doubtful);
    DROP TABLE doubtful;`);
}
