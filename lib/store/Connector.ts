/** One row as the engine returns it: final SELECTs cast to DOUBLE, INTEGER or VARCHAR, so nothing else occurs. */
export type Row = Readonly<Record<string, string | number | null>>;

/** One column of an answer: numbers, NaN where NULL, or texts. */
export type Column = Float64Array | readonly (string | null)[];

/** A running engine, the same in the browser and in Node. */
export interface Database {
  /** Opens a connection with an empty schema of its own, so that several sets of records can be open side by side. */
  connect(): Promise<Connector>;
  close(): Promise<void>;
}

/** The little that the project needs of one DuckDB connection. */
export interface Connector {
  /** Length of a text that it reads best at once: long where it reads with several threads, else short, so that others get their turn. */
  readonly textLength_bytes: number;
  /** Runs one or several statements without a result. */
  run(sql: string): Promise<void>;
  /** Runs one statement that makes a table from a question, or adds, changes or deletes rows; returns the number of these rows. */
  change(sql: string): Promise<number>;
  /** Runs one statement and returns its rows; parameters are $1, $2, ... */
  query(sql: string, parameters?: readonly (string | number | null)[]): Promise<readonly Row[]>;
  /** Runs one statement and returns its columns by name: for answers of so many rows that an object each would cost seconds. */
  columns(
    sql: string,
    parameters?: readonly (string | number | null)[],
  ): Promise<ReadonlyMap<string, Column>>;
  /** Makes a table of VARCHAR columns from a normalised body (fields parted by 0x1F, records by LF). */
  loadText(table: string, columns: readonly string[], body: Uint8Array): Promise<void>;
  /** Runs statements on a text; `rows` is what they may have in FROM: one VARCHAR a column, empty cells NULL, in order. */
  runOnText(
    text: DelimitedText,
    columns: readonly string[],
    statements: (rows: string) => string,
  ): Promise<void>;
  /**
   * Packs all tables as they are by now, to a tenth of their size or so; what is added later lies beside them as it comes. It reads
   * and writes every table, so it is for long ones only. Where another connection holds it up all stays as it was.
   */
  pack(): Promise<void>;
  /** Drops the schema with all its tables and closes the connection. */
  close(): Promise<void>;
}

/** Whole lines of cells without quoting. */
export interface DelimitedText {
  /** Stretches that follow one another. */
  readonly bytes: readonly Uint8Array[];
  readonly delimiter: string;
  readonly lineEnd: '\n' | '\r\n';
}

/** An error of the engine together with the statement that caused it. */
export class StoreError extends Error {
  constructor(cause: unknown, sql: string) {
    const reason = cause instanceof Error ? cause.message : String(cause);
    super(`${reason}\nin: ${sql.length > 2000 ? `${sql.slice(0, 2000)}…` : sql}`);
    this.name = 'StoreError';
  }
}

/** What a final SELECT may hold. */
export function plainValue(value: unknown, column: string): string | number | null {
  if (value === null || typeof value === 'string' || typeof value === 'number') return value;
  throw new Error(`a final SELECT must cast to DOUBLE, INTEGER or VARCHAR, got ${typeof value} in ${column}`);
}

/** A column of values of one kind. */
export function columnOf(values: Iterable<string | number | null>, rows: number, isText: boolean): Column {
  if (isText) return Array.from(values, (value) => (value === null ? null : String(value)));
  const numbers = new Float64Array(rows);
  let row = 0;
  for (const value of values) numbers[row++] = value === null ? Number.NaN : Number(value);
  return numbers;
}

/** Schema that the n-th connection works in. */
export function schemaName(n: number): string {
  return `records.of_${n}`;
}

/** Packs the records, unless another connection is at work on them. */
export async function packRecords(run: Connector['run']): Promise<void> {
  try {
    await run('CHECKPOINT records');
  } catch (error) {
    if (!/cannot checkpoint/i.test(String(error))) throw error;
  }
}

/** Takes a connection out of its schema and drops that. */
export function dropSchemaSql(schema: string): string {
  return `USE memory.main; DROP SCHEMA ${schema} CASCADE`;
}

/**
 * What every engine starts with: a database for the records that packs its tables where it is told to, nothing that may be fetched or
 * changed later, and no checkpoint but where one is asked for. In memory there is no log for it to shorten, and it reads every table
 * anew after each large change.
 */
export const startSql = `ATTACH ':memory:' AS records (COMPRESS);
  SET checkpoint_threshold = '1TB'; SET autoinstall_known_extensions = false; SET autoload_known_extensions = false; SET lock_configuration = true;`;

/** A normalised body as a text: fields parted by 0x1F, records by LF. */
export function normalisedText(bytes: Uint8Array): DelimitedText {
  return { bytes: [bytes], delimiter: '\u001f', lineEnd: '\n' };
}

/** Statement that makes a table of the rows of a text. */
export function tableOfTextSql(table: string): (rows: string) => string {
  return (rows) => `CREATE TABLE ${table} AS SELECT * FROM ${rows}`;
}

/** Rows of a text as one VARCHAR a column, with an explicit dialect; longest line 1 MiB. */
export function textRowsSql(
  { delimiter, lineEnd }: DelimitedText,
  columns: readonly string[],
  path: string,
): string {
  const types = columns.map((column) => `'${column}': 'VARCHAR'`).join(', ');
  return `read_csv('${path.replaceAll("'", "''")}', auto_detect = false, header = false, delim = chr(${delimiter.charCodeAt(0)}), quote = '', escape = '',
    new_line = '${lineEnd === '\n' ? '\\n' : '\\r\\n'}', columns = {${types}}, max_line_size = 1048576)`;
}
