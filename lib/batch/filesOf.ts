import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { InputFile } from '../records/importReport';
import { UnusableArguments } from './runMain';

/**
 * Every CSV file of the folder that --data names, in order of name.
 *
 * @throws UnusableArguments if the folder cannot be read or holds none
 */
export async function filesOf(folder: string): Promise<readonly InputFile[]> {
  let names: string[];
  try {
    names = (await readdir(folder)).filter((name) => name.toLowerCase().endsWith('.csv')).sort();
  } catch (error) {
    throw new UnusableArguments(
      `--data: the folder '${folder}' cannot be read (${error instanceof Error ? error.message : error})`,
    );
  }
  if (names.length === 0) throw new UnusableArguments(`--data: the folder '${folder}' holds no .csv file`);
  return Promise.all(
    names.map(async (name) => ({ name, bytes: new Uint8Array(await readFile(join(folder, name))) })),
  );
}
