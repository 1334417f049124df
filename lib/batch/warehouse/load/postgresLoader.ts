import { Client } from 'pg';
import type { PostgresSettings } from '../warehouseSettings';
import { type WarehouseColumn, type WarehouseTable, warehouseTables } from '../warehouseTables';
import type { WarehouseLoader } from './WarehouseLoader';

const partitions = 4;
const types: Readonly<Record<WarehouseColumn['kind'], string>> = {
  text: 'text',
  number: 'double precision',
  date: 'date',
};

function tableSql({ name, columns }: WarehouseTable): string {
  const list = columns.map((one) => `${one.name} ${types[one.kind]}${one.optional ? '' : ' NOT NULL'}`);
  const parts = Array.from(
    { length: partitions },
    (_, part) =>
      `CREATE TABLE ${name}_${part} PARTITION OF ${name} FOR VALUES WITH (MODULUS ${partitions}, REMAINDER ${part});`,
  );
  return name === 'units'
    ? `CREATE TABLE ${name} (${list.join(', ')});`
    : `CREATE TABLE ${name} (${list.join(', ')}) PARTITION BY HASH (unit); ${parts.join(' ')}`;
}

/** Loads PostgreSQL in one transaction: overhauls and readings parted by unit. */
export async function postgresLoader(
  { host, port, database, user }: PostgresSettings,
  password: string | undefined,
): Promise<WarehouseLoader> {
  const client = new Client({ host, port, database, user, password, application_name: 'endfloat' });
  await client.connect();
  return {
    async createTables() {
      await client.query('BEGIN');
      await client.query(warehouseTables.map(tableSql).join('\n'));
    },
    async insert({ name, columns }, rows) {
      const arrays = columns.map((_, index) => rows.map((row) => row[index] ?? null));
      const cast = columns.map((column, index) => `$${index + 1}::${types[column.kind]}[]`);
      await client.query(`INSERT INTO ${name} SELECT * FROM unnest(${cast.join(', ')})`, arrays);
    },
    async finish() {
      await client.query('COMMIT');
      await client.query('ANALYZE');
    },
    async close() {
      await client.end();
    },
  };
}
