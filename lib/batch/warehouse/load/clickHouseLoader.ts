import { ClickHouseHttp } from '../clickhouse/ClickHouseHttp';
import { rowBinary } from '../clickhouse/rowBinary';
import { WarehouseError } from '../Warehouse';
import type { ClickHouseSettings } from '../warehouseSettings';
import { type WarehouseColumn, warehouseTables } from '../warehouseTables';
import type { WarehouseLoader } from './WarehouseLoader';

/** The HTTP interface of a shard. */
export interface ShardAddress {
  readonly host: string;
  readonly port: number;
}

const types: Readonly<Record<WarehouseColumn['kind'], string>> = {
  text: 'String',
  number: 'Float64',
  date: 'Date',
};
const firstDay = '1970-01-01';

function typeOf({ kind, optional }: WarehouseColumn): string {
  return optional ? `Nullable(${types[kind]})` : types[kind];
}

/**
 * Loads ClickHouse through a Distributed table over each table of the shards, which sends every unit's rows to one of them.
 *
 * @param shards every shard, since this release makes tables on one server at a time
 */
export function clickHouseLoader(
  settings: ClickHouseSettings,
  shards: readonly ShardAddress[],
  password: string | undefined,
): WarehouseLoader {
  const entry = new ClickHouseHttp(settings, password);
  return {
    async createTables() {
      const { cluster, database } = settings;
      for (const shard of shards) {
        const http = new ClickHouseHttp({ ...settings, ...shard }, password);
        for (const { name, columns } of warehouseTables) {
          const list = columns.map((column) => `${column.name} ${typeOf(column)}`).join(', ');
          const order = columns.length > 2 ? '(unit, overhaul)' : 'unit';
          await http.run(`CREATE TABLE ${name} (${list}) ENGINE = MergeTree() ORDER BY ${order}`);
          await http.run(
            `CREATE TABLE all_${name} (${list}) ENGINE = Distributed(${cluster}, ${database}, ${name}, cityHash64(unit))`,
          );
        }
      }
    },
    async insert({ name, columns }, rows) {
      const date = columns.findIndex((column) => column.kind === 'date');
      const early = rows.find((row) => date >= 0 && String(row[date]) < firstDay);
      if (early !== undefined)
        throw new WarehouseError(
          `A ClickHouse Date begins at ${firstDay}: the overhaul of ${early[0]} on ${early[date]} cannot be kept`,
        );
      await entry.run(`INSERT INTO all_${name} FORMAT RowBinary`, rowBinary(columns, rows));
    },
    async finish() {},
    async close() {},
  };
}
