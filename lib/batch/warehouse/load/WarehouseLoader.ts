import type { Connector } from '../../../store/Connector';
import { WarehouseError } from '../Warehouse';
import { type LoadedRow, type WarehouseTable, warehouseTables } from '../warehouseTables';
import { rowsToLoad } from './rowsToLoad';

/** Makes the tables of an empty warehouse and fills them. */
export interface WarehouseLoader {
  /** Makes every table; fails if one of that name is there. */
  createTables(): Promise<void>;
  insert(table: WarehouseTable, rows: readonly LoadedRow[]): Promise<void>;
  /** Called after the last row: only then may others see the rows. */
  finish(): Promise<void>;
  close(): Promise<void>;
}

/**
 * Loads the used rows of imported records; returns rows by table.
 *
 * @throws WarehouseError if the tables cannot be made
 */
export async function loadWarehouse(
  connector: Connector,
  loader: WarehouseLoader,
): Promise<ReadonlyMap<string, number>> {
  const counts = new Map<string, number>();
  try {
    await loader.createTables();
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new WarehouseError(
      `The tables cannot be made (${reason}): only an empty database is loaded, so that nothing of another is touched`,
    );
  }
  for (const table of warehouseTables) {
    counts.set(table.name, 0);
    for await (const rows of rowsToLoad(connector, table)) {
      await loader.insert(table, rows);
      counts.set(table.name, (counts.get(table.name) ?? 0) + rows.length);
    }
  }
  await loader.finish();
  return counts;
}
