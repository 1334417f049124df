import { rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ResultTable } from '../analysis/fleetTables';
import { writeCsv } from '../records/csv/writeCsv';

/** Writes a table whole or not at all: to a temporary name first, then under its own. */
export async function writeTable(folder: string, table: ResultTable): Promise<void> {
  const path = join(folder, `${table.name}.csv`);
  await writeFile(`${path}.part`, writeCsv(table.header, table.rows));
  await rename(`${path}.part`, path);
}
