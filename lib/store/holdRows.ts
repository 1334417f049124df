import type { TableName } from '../records/canonicalTables';
import type { Connector } from './Connector';

/** Moves rows from a typed table to the problems: the question returns id, column_name, raw and reason. */
export async function holdRows(connector: Connector, table: TableName, questionSql: string): Promise<void> {
  await connector.run(`CREATE OR REPLACE TABLE doubtful AS ${questionSql};
    INSERT INTO problems SELECT '${table}', t.file, t.line, d.column_name, coalesce(d.raw, ''), d.reason, 'held'
      FROM doubtful d JOIN ${table} t USING (id);
    DELETE FROM ${table} WHERE id IN (SELECT id FROM doubtful);
    DROP TABLE doubtful;`);
}
