import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DOUBLE, type DuckDBConnection, DuckDBInstance, type DuckDBValue, VARCHAR } from '@duckdb/node-api';
import {
  type Connector,
  type Database,
  lockSql,
  normalisedText,
  type Row,
  StoreError,
  schemaName,
  tableOfTextSql,
  textRowsSql,
} from './Connector';

function plain(value: DuckDBValue): string | number | null {
  if (value === null || typeof value === 'string' || typeof value === 'number') return value;
  throw new Error(`a final SELECT must cast to DOUBLE, INTEGER or VARCHAR, got ${typeof value}`);
}

/** Opens native DuckDB in memory, for the batch command and the tests. */
export async function openNodeDatabase(): Promise<Database> {
  const instance = await DuckDBInstance.create(':memory:');
  const folder = await mkdtemp(join(tmpdir(), 'endfloat-'));
  const settings = await instance.connect();
  await settings.run(lockSql);
  settings.closeSync();
  let connections = 0;
  return {
    connect: async () => connector(await instance.connect(), schemaName(connections++), folder),
    async close() {
      instance.closeSync();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

async function connector(connection: DuckDBConnection, schema: string, folder: string): Promise<Connector> {
  let loads = 0;
  const run = async (sql: string): Promise<void> => {
    try {
      await connection.run(sql);
    } catch (error) {
      throw new StoreError(error, sql);
    }
  };
  const runOnText: Connector['runOnText'] = async (text, columns, statements) => {
    const path = join(folder, `${schema}-${loads++}.txt`);
    await writeFile(path, text.bytes);
    await run(statements(textRowsSql(text, columns, path)));
    await rm(path);
  };
  await run(`CREATE SCHEMA ${schema}; USE ${schema}`);
  return {
    textLength_bytes: 128_000_000,
    run,
    async change(sql) {
      try {
        const [[rows] = []] = await connection.runAndReadAll(sql).then((reader) => reader.getRows());
        return Number(rows);
      } catch (error) {
        throw new StoreError(error, sql);
      }
    },
    async query(sql, parameters = []) {
      try {
        // Left to itself the binding takes whole numbers for 32-bit ones.
        const types = parameters.map((value) => (typeof value === 'number' ? DOUBLE : VARCHAR));
        const reader = await connection.runAndReadAll(sql, [...parameters], types);
        return reader.getRowObjects().map((row) => {
          const entries = Object.entries(row).map(([name, value]) => [name, plain(value)]);
          return Object.fromEntries(entries) as Row;
        });
      } catch (error) {
        throw new StoreError(error, sql);
      }
    },
    loadText: (table, columns, body) => runOnText(normalisedText(body), columns, tableOfTextSql(table)),
    runOnText,
    async close() {
      await run(`USE main; DROP SCHEMA ${schema} CASCADE`);
      connection.closeSync();
    },
  };
}
