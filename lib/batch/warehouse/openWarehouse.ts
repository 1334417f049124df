import { openClickHouse } from './clickhouse/ClickHouseWarehouse';
import { openPostgres } from './postgresql/PostgresWarehouse';
import type { Warehouse } from './Warehouse';
import { passwordVariable, type WarehouseSettings } from './warehouseSettings';

/** Opens the warehouse that the settings name. */
export async function openWarehouse(settings: WarehouseSettings): Promise<Warehouse> {
  const password = process.env[passwordVariable];
  return settings.kind === 'postgresql'
    ? openPostgres(settings, password)
    : openClickHouse(settings, password);
}
