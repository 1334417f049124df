import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DOUBLE, type DuckDBConnection, DuckDBInstance, type DuckDBResult, VARCHAR } from '@duckdb/node-api';
import {
  type Column,
  type Connector,
  columnOf,
  type Database,
  lockSql,
  normalisedText,
  plainValue,
  type Row,
  StoreError,
  schemaName,
  tableOfTextSql,
  textRowsSql,
} from './Connector';

/** Columns of a result, from chunk to chunk without an object a row. */
async function columnsOf(result: DuckDBResult): Promise<ReadonlyMap<string, Column>> {
  const chunks = await result.fetchAllChunks();
  const rows = chunks.reduce((sum, chunk) => sum + chunk.rowCount, 0);
  const filled = result.columnNames().map((name, index): [string, Column] => {
    const values = function* () {
      for (const chunk of chunks) {
        const vector = chunk.getColumnVector(index);
        for (let item = 0; item < chunk.rowCount; item++) yield plainValue(vector.getItem(item), name);
      }
    };
    return [name, columnOf(values(), rows, result.columnType(index).typeId === VARCHAR.typeId)];
  });
  return new Map(filled);
}

async function rowsOf(result: DuckDBResult): Promise<readonly Row[]> {
  const names = result.columnNames();
  const rows: Row[] = [];
  for (const chunk of await result.fetchAllChunks()) {
    const vectors = names.map((_, index) => chunk.getColumnVector(index));
    for (let item = 0; item < chunk.rowCount; item++) {
      const row: Record<string, string | number | null> = {};
      names.forEach((name, index) => {
        row[name] = plainValue(vectors[index]?.getItem(item), name);
      });
      rows.push(row);
    }
  }
  return rows;
}

/** What a database may take of the machine. */
export interface DatabaseBounds {
  readonly memory_MB: number;
  readonly threads: number;
}

/**
 * Opens native DuckDB in memory, for the batch command and the tests.
 *
 * @param bounds what it may take; beyond the memory it goes on in a folder that is removed when it is closed. All if not given.
 */
export async function openNodeDatabase(bounds?: DatabaseBounds): Promise<Database> {
  const folder = await mkdtemp(join(tmpdir(), 'endfloat-'));
  const instance = await DuckDBInstance.create(':memory:', {
    temp_directory: join(folder, 'spilled'),
    ...(bounds && { memory_limit: `${bounds.memory_MB}MB`, threads: String(bounds.threads) }),
  });
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
  const answer = async (sql: string, parameters: readonly (string | number | null)[]) => {
    // Left to itself the binding takes whole numbers for 32-bit ones.
    const types = parameters.map((value) => (typeof value === 'number' ? DOUBLE : VARCHAR));
    return connection.run(sql, [...parameters], types);
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
        return await rowsOf(await answer(sql, parameters));
      } catch (error) {
        throw new StoreError(error, sql);
      }
    },
    async columns(sql, parameters = []) {
      try {
        return await columnsOf(await answer(sql, parameters));
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
