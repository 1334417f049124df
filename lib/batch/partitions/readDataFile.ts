import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import type { InputFile } from '../../records/importReport';
import { quoted } from '../../store/sql/quoted';
import { UnusableArguments } from '../runMain';
import type { DataFile } from './readDataFolder';

/** A file of the input could not be read at all. */
export class UnreadableFile extends UnusableArguments {}

/** True of the name of a Parquet file. */
export function isParquet(name: string): boolean {
  return name.toLowerCase().endsWith('.parquet');
}

/**
 * The bytes of a file of the input; a Parquet file as the CSV text of its rows, so that it meets the same checks.
 *
 * @throws UnreadableFile with the file's name and what was wrong
 */
export async function readDataFile({ name, path }: DataFile): Promise<InputFile> {
  try {
    return { name, bytes: isParquet(name) ? await csvOfParquet(path) : await bytesOf(path) };
  } catch (error) {
    const reason = error instanceof Error ? error.message.split('\n')[0] : String(error);
    throw new UnreadableFile(`${name} cannot be read: ${reason}`);
  }
}

/** The bytes as they were read, without a copy. */
async function bytesOf(path: string): Promise<Uint8Array> {
  const { buffer, byteOffset, length } = await readFile(path);
  return new Uint8Array(buffer, byteOffset, length);
}

/** Rows of a Parquet file with its own columns only: a folder named `frame=...` is no column of its files. */
export function parquetRowsSql(path: string): string {
  return `read_parquet(${quoted(path)}, hive_partitioning = false)`;
}

/** Numbers come out with the fewest digits that give them again, days as YYYY-MM-DD, whatever time of day stands beside them. */
async function csvOfParquet(path: string): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'endfloat-parquet-'));
  const instance = await DuckDBInstance.create(':memory:', { threads: '1' });
  const connection = await instance.connect();
  try {
    const from = parquetRowsSql(path);
    const columns = (await connection.runAndReadAll(`DESCRIBE SELECT * FROM ${from}`)).getRowObjects();
    const cells = columns.map(({ column_name, column_type }) => {
      const column = `"${String(column_name).replaceAll('"', '""')}"`;
      return String(column_type).startsWith('TIMESTAMP') ? `CAST(${column} AS DATE) AS ${column}` : column;
    });
    const text = join(folder, 'rows.csv');
    await connection.run(
      `COPY (SELECT ${cells.join(', ')} FROM ${from}) TO ${quoted(text)} (FORMAT csv, HEADER true, DATEFORMAT '%Y-%m-%d')`,
    );
    return await bytesOf(text);
  } finally {
    connection.closeSync();
    instance.closeSync();
    await rm(folder, { recursive: true });
  }
}
