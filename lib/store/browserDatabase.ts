import { AsyncDuckDB, type AsyncDuckDBConnection, ConsoleLogger, LogLevel } from '@duckdb/duckdb-wasm';
import { joinedBytes } from '../records/joinedBytes';
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
import { fetchedFile } from './fetchedFile';

/** Longest wait for the engine to start; a blocked worker never answers. */
const startTimeout_ms = 60_000;

/** Where the engine's files lie on the site. */
export interface EngineFiles {
  readonly worker: string;
  /** gzip-compressed, decompressed here: some hosts refuse or do not compress the plain file. */
  readonly wasmGzip: string;
}

/** What the reader is told of a file of the engine: its address below the root of the site. */
function fileName(url: string): string {
  return `${url.replace(/^.*\/(?=engine\/)/, '')} (the database engine)`;
}

function decompressed(url: string): Promise<string> {
  return fetchedFile(fileName(url), url, async ({ body }) => {
    if (body === null) throw new Error('it is empty');
    const stream = body.pipeThrough(new DecompressionStream('gzip'));
    const wasm = await new Response(stream, { headers: { 'content-type': 'application/wasm' } }).blob();
    return URL.createObjectURL(wasm);
  });
}

/** Rejects once the worker of the engine ends with an error, be it that its own file did not come. */
function endOf(worker: Worker, url: string): Promise<never> {
  return new Promise((_, reject) => {
    worker.addEventListener('error', ({ message }) =>
      reject(
        new Error(
          message === undefined || message === ''
            ? `${fileName(url)} could not be loaded: check the connection, then try again`
            : `the database engine stopped (${message}): try again, or open fewer files`,
        ),
      ),
    );
  });
}

function inTime<T>(work: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(
      () => reject(new Error('the database engine did not start within a minute: reload the page')),
      startTimeout_ms,
    );
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

type Table = Awaited<ReturnType<AsyncDuckDBConnection['query']>>;

/** Rows of an answer, filled column by column: asking each row for its cells takes ten times as long. */
function rowsOf(table: Table): readonly Row[] {
  const rows: Record<string, string | number | null>[] = Array.from({ length: table.numRows }, () => ({}));
  for (const [index, { name }] of table.schema.fields.entries()) {
    let place = 0;
    for (const value of table.getChildAt(index) ?? [])
      (rows[place++] as Record<string, string | number | null>)[name] = plainValue(value, name);
  }
  return rows;
}

/** Columns of an answer; numbers without gaps are copied whole. */
function columnsOf(table: Table): ReadonlyMap<string, Column> {
  const filled = table.schema.fields.map(({ name, type }, index): [string, Column] => {
    const vector = table.getChildAt(index);
    if (String(type) === 'Float64' && vector?.nullCount === 0)
      return [name, (vector.toArray() as Float64Array).slice()];
    const values = function* () {
      for (const value of vector ?? []) yield plainValue(value, name);
    };
    return [name, columnOf(values(), table.numRows, String(type) === 'Utf8')];
  });
  return new Map(filled);
}

/** Starts the in-browser database engine from files of the site itself. */
export async function openBrowserDatabase(files: EngineFiles): Promise<Database> {
  const worker = new Worker(files.worker);
  const end = endOf(worker, files.worker);
  // Who waits for something is told of it; later calls are the engine's own to fail.
  end.catch(() => {});
  const database = new AsyncDuckDB(new ConsoleLogger(LogLevel.WARNING), worker);
  try {
    const wasm = await Promise.race([decompressed(files.wasmGzip), end]);
    await Promise.race([inTime(database.instantiate(wasm)), end]);
    URL.revokeObjectURL(wasm);
  } catch (error) {
    // Another try starts a worker of its own.
    worker.terminate();
    throw error;
  }
  const settings = await database.connect();
  await settings.query(startSql);
  await settings.close();
  let connections = 0;
  return {
    connect: async () => connector(database, await database.connect(), schemaName(connections++)),
    close: () => database.terminate(),
  };
}

async function connector(
  database: AsyncDuckDB,
  connection: AsyncDuckDBConnection,
  schema: string,
): Promise<Connector> {
  let loads = 0;
  const run = async (sql: string): Promise<void> => {
    try {
      await connection.query(sql);
    } catch (error) {
      throw new StoreError(error, sql);
    }
  };
  const runOnText: Connector['runOnText'] = async (text, columns, statements) => {
    const name = `${schema}-${loads++}.txt`;
    // The engine takes the array over, so it gets a copy of just the bytes in use.
    await database.registerFileBuffer(name, joinedBytes(text.bytes));
    await run(statements(textRowsSql(text, columns, name)));
    await database.dropFile(name);
  };
  const answer = async (sql: string, parameters: readonly (string | number | null)[]): Promise<Table> => {
    if (parameters.length === 0) return connection.query(sql);
    const statement = await connection.prepare(sql);
    const table = await statement.query(...parameters);
    await statement.close();
    return table;
  };
  await run(`CREATE SCHEMA ${schema}; USE ${schema}`);
  return {
    textLength_bytes: 4_000_000,
    run,
    async change(sql) {
      try {
        const rows = (await connection.query(sql)).getChildAt(0)?.get(0);
        return Number(rows);
      } catch (error) {
        throw new StoreError(error, sql);
      }
    },
    async query(sql, parameters = []) {
      try {
        return rowsOf(await answer(sql, parameters));
      } catch (error) {
        throw new StoreError(error, sql);
      }
    },
    async columns(sql, parameters = []) {
      try {
        return columnsOf(await answer(sql, parameters));
      } catch (error) {
        throw new StoreError(error, sql);
      }
    },
    loadText: (table, columns, body) => runOnText(normalisedText(body), columns, tableOfTextSql(table)),
    runOnText,
    pack: () => packRecords(run),
    async close() {
      await run(dropSchemaSql(schema));
      await connection.close();
    },
  };
}
