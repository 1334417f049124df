import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import './keptMemory';
import {
  DOUBLE,
  type DuckDBConnection,
  DuckDBDoubleVector,
  DuckDBInstance,
  type DuckDBResult,
  type DuckDBVector,
  VARCHAR,
} from '@duckdb/node-api';
import {
  type Column,
  type Connector,
  columnOf,
  type Database,
  dropSchemaSql,
  normalisedText,
  packRecords,
  plainValue,
  type Row,
  StoreError,
  schemaName,
  startSql,
  tableOfTextSql,
  textRowsSql,
} from './Connector';

/** Columns of a result, from chunk to chunk without an object a row; those of DOUBLE are copied as they lie. */
async function columnsOf(result: DuckDBResult): Promise<ReadonlyMap<string, Column>> {
  const chunks = (await result.fetchAllChunks()).map((chunk) => ({ chunk, rows: chunk.rowCount }));
  const rows = chunks.reduce((sum, one) => sum + one.rows, 0);
  const filled = result.columnNames().map((name, index): [string, Column] => {
    const vectors = chunks.map((one) => ({ ...one, vector: one.chunk.getColumnVector(index) }));
    const { typeId } = result.columnType(index);
    if (typeId === DOUBLE.typeId) return [name, numbersOf(vectors, rows)];
    const values = function* () {
      for (const { vector, rows: own } of vectors)
        for (let item = 0; item < own; item++) yield plainValue(vector.getItem(item), name);
    };
    return [name, columnOf(values(), rows, typeId === VARCHAR.typeId)];
  });
  return new Map(filled);
}

/** A column of numbers, NaN where NULL. */
function numbersOf(
  vectors: readonly { readonly vector: DuckDBVector; readonly rows: number }[],
  rows: number,
): Float64Array {
  const numbers = new Float64Array(rows);
  let at = 0;
  for (const { vector, rows: own } of vectors) {
    if (!(vector instanceof DuckDBDoubleVector)) throw new Error('a column of DOUBLE requires vectors of it');
    for (let item = 0; item < own; item++) numbers[at++] = vector.getItem(item) ?? Number.NaN;
  }
  return numbers;
}

async function rowsOf(result: DuckDBResult): Promise<readonly Row[]> {
  const names = result.columnNames();
  const rows: Row[] = [];
  for (const chunk of await result.fetchAllChunks()) {
    const vectors = names.map((_, index) => chunk.getColumnVector(index));
    // Asked once: every time it goes to the native code.
    const own = chunk.rowCount;
    for (let item = 0; item < own; item++) {
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
  /** Folder for what does not fit; one of the system's own if not given. */
  readonly folder: string;
}

/**
 * Opens native DuckDB in memory, for the batch command and the tests.
 *
 * @param bounds what it may take, all that is not given; beyond the memory it goes on in a folder that is removed when it is closed.
 */
export async function openNodeDatabase({
  memory_MB,
  threads,
  folder: given,
}: Partial<DatabaseBounds> = {}): Promise<Database> {
  const folder = given ?? (await mkdtemp(join(tmpdir(), 'endfloat-')));
  await mkdir(folder, { recursive: true });
  const instance = await DuckDBInstance.create(':memory:', {
    temp_directory: join(folder, 'spilled'),
    ...(memory_MB !== undefined && { memory_limit: `${memory_MB}MB` }),
    ...(threads !== undefined && { threads: String(threads) }),
  });
  const settings = await instance.connect();
  await settings.run(startSql);
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
    pack: () => packRecords(run),
    async close() {
      await run(dropSchemaSql(schema));
      connection.closeSync();
    },
  };
}
