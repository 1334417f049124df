import { open } from 'node:fs/promises';
import { group } from 'd3-array';
import type { Connector } from '../../store/Connector';
import { quoted } from '../../store/sql/quoted';
import { tableOfHead } from '../../store/tableOfHead';
import { isParquet, parquetRowsSql } from './readDataFile';
import type { DataFile, DataFolder } from './readDataFolder';

/** What is seen of the parts: rows of units and overhauls, days, engines, and names by which rows of several tables belong together. */
export const seenTablesSql = `
  CREATE TABLE seen_units (part VARCHAR, unit VARCHAR, frame VARCHAR, overhauls INTEGER);
  CREATE TABLE seen_days (day DATE, of_overhaul BOOLEAN);
  CREATE TABLE seen_engines (part VARCHAR, engine VARCHAR, lacks_hours BOOLEAN);
  CREATE TABLE seen_names (part VARCHAR, name UBIGINT);`;

/** A file with the part that it lies in, '' for those of the whole fleet, and the canonical table that it is, if any. */
export interface SeenFile {
  readonly part: string;
  readonly file: DataFile;
  readonly table: string | null;
}

/** What is asked of the rows of a table, which carry their part. */
const statementsOf: Readonly<Record<string, (rows: string) => readonly string[]>> = {
  units: (rows) => [
    `INSERT INTO seen_units SELECT part, nullif(trim(unit), ''), nullif(trim(frame), ''), 0 FROM ${rows}`,
  ],
  overhauls: (rows) => [
    `INSERT INTO seen_units SELECT part, nullif(trim(unit), ''), NULL, count(*) FROM ${rows} GROUP BY ALL`,
    daysSql(rows, 'date', true),
    namesSql(rows, 'overhaul'),
    namesSql(rows, 'engine'),
    `INSERT INTO seen_engines SELECT part, nullif(trim(engine), ''), bool_or(nullif(trim(CAST(unit_hours AS VARCHAR)), '') IS NULL) FROM ${rows} GROUP BY ALL`,
  ],
  plan: (rows) => [daysSql(rows, 'hours_now_date', false), namesSql(rows, 'engine')],
  events: (rows) => [daysSql(rows, 'date', false)],
  installations: (rows) => [daysSql(rows, 'from_date', false)],
};

function daysSql(rows: string, column: string, ofOverhaul: boolean): string {
  const day = `try_cast(${column} AS DATE)`;
  return `INSERT INTO seen_days SELECT unnest([min(${day}), max(${day})]), ${ofOverhaul} FROM ${rows}`;
}

function namesSql(rows: string, column: string): string {
  return `INSERT INTO seen_names SELECT DISTINCT part, hash('${column}', trim(${column})) FROM ${rows} WHERE trim(${column}) <> ''`;
}

/** Fills the tables of what is seen; a file in another form than the plain canonical one is left to the import. */
export async function lookThrough(
  connector: Connector,
  { shared, parts }: DataFolder,
): Promise<readonly SeenFile[]> {
  const tables = new Map<string, string | null>();
  const seen: (SeenFile & { readonly head: string })[] = [];
  const take = async (part: string, file: DataFile) => {
    const head = await headOf(connector, file);
    const table = tables.get(head) ?? tableOfHead({ name: file.name, bytes: Buffer.from(head, 'latin1') });
    tables.set(head, table);
    seen.push({ part, file, table, head });
  };
  for (const file of shared) await take('', file);
  for (const part of parts) for (const file of part.files) await take(part.name, file);
  // Files that begin alike are read by one statement: by itself each takes longer to open than to read.
  const alike = group(seen, ({ file, head }) => (isParquet(file.name) ? file.path : head));
  for (const files of alike.values()) {
    const statements = statementsOf[files[0]?.table ?? ''];
    if (statements === undefined || (await areRun(connector, statements(rowsSql(files))))) continue;
    for (const file of files.length > 1 ? files : []) await areRun(connector, statements(rowsSql([file])));
  }
  return seen;
}

/** Runs statements, all or none; whether they could be run: the import says what is wrong with a file, by line. */
async function areRun(connector: Connector, statements: readonly string[]): Promise<boolean> {
  try {
    await connector.run(`BEGIN; ${statements.join('; ')}; COMMIT;`);
    return true;
  } catch {
    await connector.run('ROLLBACK');
    return false;
  }
}

/** Rows of files of the same columns, with their part. */
function rowsSql(files: readonly SeenFile[]): string {
  const [one] = files;
  if (one !== undefined && isParquet(one.file.name))
    return `(SELECT ${quoted(one.part)} AS part, * FROM ${parquetRowsSql(one.file.path)})`;
  const paths = files.map(({ file }) => quoted(file.path)).join(', ');
  const partOf = files.map(({ file, part }) => `(${quoted(file.path)}, ${quoted(part)})`).join(', ');
  return `(SELECT p.part, r.* FROM read_csv([${paths}], all_varchar = true, header = true, delim = ',', quote = '"', ignore_errors = true,
      strict_mode = false, null_padding = true, hive_partitioning = false, filename = 'path of the file') r
    JOIN (VALUES ${partOf}) p(path, part) ON p.path = r."path of the file")`;
}

const headBytes = 65_536;

/** First line of a file, a character a byte; of a Parquet file its columns. */
async function headOf(connector: Connector, { name, path }: DataFile): Promise<string> {
  try {
    if (isParquet(name)) {
      const columns = await connector.query(
        `SELECT column_name FROM (DESCRIBE SELECT * FROM ${parquetRowsSql(path)})`,
      );
      return `${columns.map((row) => row.column_name).join(',')}\n`;
    }
    const file = await open(path);
    try {
      const { buffer, bytesRead } = await file.read(new Uint8Array(headBytes), 0, headBytes, 0);
      const head = Buffer.from(buffer.subarray(0, bytesRead)).toString('latin1');
      return head.slice(0, head.indexOf('\n') + 1) || head;
    } finally {
      await file.close();
    }
  } catch {
    // The import says that it cannot be read.
    return '';
  }
}
