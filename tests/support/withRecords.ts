import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { InputFile } from '../../lib/records/importReport';
import type { Connector } from '../../lib/store/Connector';
import { type ImportedData, importFiles } from '../../lib/store/importFiles';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';

/** Every CSV file of a folder, in order of name. */
export function filesOf(folder: string): readonly InputFile[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.csv'))
    .sort()
    .map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(folder, name))) }));
}

/** Imports files into a fresh store, hands it to the test, and closes it. */
export async function withRecords<T>(
  files: readonly InputFile[],
  use: (connector: Connector, imported: ImportedData) => Promise<T>,
): Promise<T> {
  const database = await openNodeDatabase();
  try {
    const connector = await database.connect();
    return await use(connector, await importFiles(connector, files, async () => {}));
  } finally {
    await database.close();
  }
}
