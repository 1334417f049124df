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

interface HeadedFile extends SeenFile {
  /** Its first line. */
  readonly head: string;
}

/** What is asked of the rows of a table, which carry their part, and of which of its columns. */
interface Look {
  readonly columns: readonly string[];
  readonly statements: readonly string[];
}

const looks: Readonly<Record<string, Look>> = {
  units: {
    columns: ['unit', 'frame'],
    statements: [
      "INSERT INTO seen_units SELECT part, nullif(trim(unit), ''), nullif(trim(frame), ''), 0 FROM seen_rows",
    ],
  },
  overhauls: {
    columns: ['overhaul', 'unit', 'date', 'engine', 'unit_hours'],
    statements: [
      "INSERT INTO seen_units SELECT part, nullif(trim(unit), ''), NULL, count(*) FROM seen_rows GROUP BY ALL",
      daysSql('date', true),
      namesSql('overhaul'),
      namesSql('engine'),
      `INSERT INTO seen_engines SELECT part, nullif(trim(engine), ''), bool_or(nullif(trim(CAST(unit_hours AS VARCHAR)), '') IS NULL) FROM seen_rows GROUP BY ALL`,
    ],
  },
  plan: {
    columns: ['hours_now_date', 'engine'],
    statements: [daysSql('hours_now_date', false), namesSql('engine')],
  },
  events: { columns: ['date'], statements: [daysSql('date', false)] },
  installations: { columns: ['from_date'], statements: [daysSql('from_date', false)] },
};

function daysSql(column: string, ofOverhaul: boolean): string {
  const day = `try_cast(${column} AS DATE)`;
  return `INSERT INTO seen_days SELECT unnest([min(${day}), max(${day})]), ${ofOverhaul} FROM seen_rows`;
}

function namesSql(column: string): string {
  return `INSERT INTO seen_names SELECT DISTINCT part, hash('${column}', trim(${column})) FROM seen_rows WHERE trim(${column}) <> ''`;
}

/** Fills the tables of what is seen; a file in another form than the plain canonical one is left to the import. */
export async function lookThrough(
  connector: Connector,
  { shared, parts }: DataFolder,
): Promise<readonly SeenFile[]> {
  const tables = new Map<string, string | null>();
  const seen: HeadedFile[] = [];
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
    const look = looks[files[0]?.table ?? ''];
    if (look === undefined || (await isLookedAt(connector, look, files))) continue;
    for (const file of files.length > 1 ? files : []) await isLookedAt(connector, look, [file]);
  }
  return seen;
}

/**
 * Asks of the rows of files of the same columns, all or nothing; whether it could be asked: the import says what is wrong with a
 * file, by line. The rows are kept while they are asked about, since opening hundreds of files takes longer than anything else here.
 */
async function isLookedAt(
  connector: Connector,
  { columns, statements }: Look,
  files: readonly HeadedFile[],
): Promise<boolean> {
  const rows = `CREATE TABLE seen_rows AS SELECT part, ${columns.join(', ')} FROM ${rowsSql(files)}`;
  try {
    await connector.run(`BEGIN; ${[rows, ...statements, 'DROP TABLE seen_rows'].join('; ')}; COMMIT;`);
    return true;
  } catch {
    await connector.run('ROLLBACK');
    return false;
  }
}

/** Rows of files of the same columns, with their part. */
function rowsSql(files: readonly HeadedFile[]): string {
  const [one] = files;
  if (one !== undefined && isParquet(one.file.name))
    return `(SELECT ${quoted(one.part)} AS part, * FROM ${parquetRowsSql(one.file.path)})`;
  const paths = files.map(({ file }) => quoted(file.path)).join(', ');
  const partOf = files.map(({ file, part }) => `(${quoted(file.path)}, ${quoted(part)})`).join(', ');
  return `(SELECT p.part, r.* FROM read_csv([${paths}], ${columnsSql(one?.head ?? '')}, header = true, delim = ',', quote = '"', ignore_errors = true,
      strict_mode = false, null_padding = true, hive_partitioning = false, filename = 'path of the file') r
    JOIN (VALUES ${partOf}) p(path, part) ON p.path = r."path of the file")`;
}

/** The columns as a plain first line names them, so that the engine need not find them out file by file; else it does. */
function columnsSql(head: string): string {
  if (!/^[a-z_]+(,[a-z_]+)*\r?\n$/.test(head)) return 'all_varchar = true';
  const types = head.trim().split(',');
  const lineEnd = head.endsWith('\r\n') ? '\\r\\n' : '\\n';
  return `auto_detect = false, escape = '"', new_line = '${lineEnd}', columns = {${types.map((name) => `'${name}': 'VARCHAR'`).join(', ')}}`;
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
