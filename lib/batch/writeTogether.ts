import { mkdir, mkdtemp, readdir, rename, rm } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { ResultTable } from '../analysis/fleetTables';
import { writeTable } from './writeTable';

/**
 * Writes tables all or none: into a folder beside the wanted one first, from where they are moved when the last is written.
 */
export async function writeTogether(folder: string, tables: readonly ResultTable[]): Promise<void> {
  const target = resolve(folder);
  await mkdir(dirname(target), { recursive: true });
  const beside = await mkdtemp(join(dirname(target), `.${basename(target)}-`));
  try {
    for (const table of tables) await writeTable(beside, table);
    await mkdir(target, { recursive: true });
    for (const name of await readdir(beside)) await rename(join(beside, name), join(target, name));
  } finally {
    await rm(beside, { recursive: true, force: true });
  }
}
