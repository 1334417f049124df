import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { quoted } from '../../store/sql/quoted';

/** Columns that are packed as numbers and days; the others are texts, as the canonical tables have them. */
const numbers = ['unit_hours', 'value', 'hours_per_year', 'hours_now', 'interval_h', 'rated_life_h'];
const days = ['date', 'made_on', 'hours_now_date', 'next_overhaul_date'];

/** Replaces every CSV file below a folder by a Parquet file of the same rows, numbers and days typed. */
export async function packAsParquet(folder: string): Promise<void> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  for (const name of await readdir(folder, { recursive: true })) {
    if (!name.endsWith('.csv')) continue;
    const path = join(folder, name);
    const from = `read_csv(${quoted(path)}, all_varchar = true, header = true, delim = ',', quote = '"', hive_partitioning = false)`;
    const columns = (await connection.run(`SELECT * FROM ${from} LIMIT 0`)).columnNames();
    const cells = columns.map((column) => {
      const type = numbers.includes(column) ? 'DOUBLE' : days.includes(column) ? 'DATE' : 'VARCHAR';
      return `CAST("${column}" AS ${type}) AS "${column}"`;
    });
    await connection.run(
      `COPY (SELECT ${cells.join(', ')} FROM ${from}) TO ${quoted(path.replace(/\.csv$/, '.parquet'))} (FORMAT parquet)`,
    );
    await rm(path);
  }
  connection.closeSync();
  instance.closeSync();
}
