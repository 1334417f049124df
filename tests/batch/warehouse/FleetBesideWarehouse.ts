import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openWarehouse } from '../../../lib/batch/warehouse/openWarehouse';
import { runsOfWarehouse } from '../../../lib/batch/warehouse/runsOfWarehouse';
import { type Warehouse, WarehouseError } from '../../../lib/batch/warehouse/Warehouse';
import type { WarehouseSettings } from '../../../lib/batch/warehouse/warehouseSettings';
import type { Connector, Database } from '../../../lib/store/Connector';
import { type ImportedData, importFiles } from '../../../lib/store/importFiles';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { withRecords } from '../../support/withRecords';
import { partResetFleet } from './partResetFleet';
import { serverFolder } from './warehouses';

/** How a batch command ended. */
export interface Ended {
  readonly status: number;
  readonly stderr: string;
  readonly out: string;
  /** What stands where the results were to be written. */
  readonly written: readonly string[];
}

/** A made-up fleet of 60 units as a folder, for commands, and with its tables but the readings in a store. */
export class FleetBesideWarehouse {
  readonly servers = serverFolder();
  private readonly files = partResetFleet(60);
  private readonly work = mkdtempSync(join(tmpdir(), 'beside-warehouse-'));
  private readonly data = join(this.work, 'data');
  private runs = 0;

  private constructor(
    private readonly database: Database,
    private readonly connector: Connector,
  ) {
    mkdirSync(this.data);
    for (const { name, bytes } of this.files) writeFileSync(join(this.data, name), bytes);
  }

  static async open(): Promise<FleetBesideWarehouse> {
    const database = await openNodeDatabase();
    const fleet = new FleetBesideWarehouse(database, await database.connect());
    const others = fleet.files.filter(({ name }) => name !== 'readings.csv');
    await importFiles(fleet.connector, others, async () => {});
    return fleet;
  }

  /** Hands all records of the fleet to what loads a warehouse. */
  withAll<T>(use: (connector: Connector, imported: ImportedData) => Promise<T>): Promise<T> {
    return withRecords(this.files, use);
  }

  /** Runs the batch command into a folder of its own, on readings in a warehouse, or on those of the folder if there is none. */
  analyse(settings: WarehouseSettings | null): Promise<Ended> {
    const place = join(this.work, `run-${this.runs++}`);
    mkdirSync(place);
    const file = join(this.work, `warehouse-${this.runs}.json`);
    writeFileSync(file, JSON.stringify(settings));
    const out = join(place, 'out');
    const words = ['--data', this.data, ...(settings === null ? [] : ['--warehouse', file]), '--out', out];
    return new Promise((resolve) => {
      execFile(process.execPath, ['--import', 'tsx', 'lib/batch/analyse.ts', ...words], (error, _, stderr) =>
        resolve({
          status: error === null ? 0 : Number(error.code),
          stderr,
          out,
          written: readdirSync(place),
        }),
      );
    });
  }

  /** What the runs of a warehouse say when they cannot be used. */
  async refusal(settings: WarehouseSettings, through = (warehouse: Warehouse) => warehouse): Promise<string> {
    const warehouse = await openWarehouse(settings);
    const source = runsOfWarehouse(through(warehouse), () => {});
    const error: unknown = await source(this.connector, '2026-01-01').catch((reason: unknown) => reason);
    await warehouse.close();
    if (error instanceof WarehouseError) return error.message;
    throw error instanceof Error ? error : new Error('nothing was refused');
  }

  async close(): Promise<void> {
    await this.database.close();
    this.servers.remove();
    rmSync(this.work, { recursive: true, force: true });
  }
}
