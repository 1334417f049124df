import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { clickHouseLoader } from '../../../lib/batch/warehouse/load/clickHouseLoader';
import { postgresLoader } from '../../../lib/batch/warehouse/load/postgresLoader';
import { loadWarehouse } from '../../../lib/batch/warehouse/load/WarehouseLoader';
import {
  type ClickHouseServers,
  clickHouseProgram,
  startClickHouse,
} from '../../../lib/batch/warehouse/servers/clickHouseServers';
import {
  type PostgresServer,
  postgresPrograms,
  startPostgres,
} from '../../../lib/batch/warehouse/servers/postgresServer';
import type { Connector } from '../../../lib/store/Connector';

export const postgres = postgresPrograms();
export const clickHouse = clickHouseProgram();

/** Says on the console which tests are left out and why. */
export function tellWhatIsSkipped(): void {
  if (postgres === null)
    console.log('PostgreSQL is not installed (Debian: postgresql): its warehouse tests are skipped');
  if (clickHouse === null)
    console.log('ClickHouse is not installed (Debian: clickhouse-server): its warehouse tests are skipped');
}

/** A folder that servers may enter whoever they run as. */
export function serverFolder(): { readonly path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), 'endfloat-warehouse-'));
  chmodSync(path, 0o755);
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

/** A private PostgreSQL with the used rows of a store. */
export async function loadedPostgres(
  folder: string,
  programs: string,
  connector: Connector,
): Promise<PostgresServer> {
  const server = await startPostgres(join(folder, 'postgresql'), programs);
  const loader = await postgresLoader(server.settings, undefined);
  await loadWarehouse(connector, loader);
  await loader.close();
  return server;
}

/** Two private ClickHouse shards with the used rows of a store. */
export async function loadedClickHouse(
  folder: string,
  program: string,
  connector: Connector,
): Promise<ClickHouseServers> {
  const servers = await startClickHouse(join(folder, 'clickhouse'), program, 2);
  await loadWarehouse(connector, clickHouseLoader(servers.settings, servers.shards, undefined));
  return servers;
}
