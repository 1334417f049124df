import type { CanonicalTable } from '../records/canonicalTables';
import type { Connector } from './Connector';
import { checkedTableSql, settleFaultsSql, takeCheckedSql } from './sql/typedTable';

/**
 * Turns the raw rows of a table into typed ones: `<name>` with id, file, line, value_column and the typed columns.
 * Cells that cannot be read go to `problems` with their reason; rows whose needed cells are among them are left out.
 */
export async function typeTable(connector: Connector, table: CanonicalTable): Promise<void> {
  const rows = await connector.change(checkedTableSql(table));
  if (rows > 0 && (await hasFaults(connector, table))) await connector.run(settleFaultsSql(table));
  await connector.run(takeCheckedSql(table));
}

/** Whether a cell of the checked rows of a table cannot be used. */
export async function hasFaults(connector: Connector, { name }: CanonicalTable): Promise<boolean> {
  const [faulty] = await connector.query(
    `SELECT EXISTS (SELECT 1 FROM checked_${name} WHERE faults IS NOT NULL)::INTEGER AS n`,
  );
  return faulty?.n === 1;
}
