import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { writeFleetFolder } from '../../../lib/batch/bench/writeFleetFolder';
import { analyseParts } from '../../../lib/batch/partitions/analyseParts';
import { readDataFolder } from '../../../lib/batch/partitions/readDataFolder';

/** Three sister groups of eight units, dealt in turn, with a stock that all three share; two of the ten series, for time. */
export async function writeSmallFleet(folder: string, partitioned: boolean): Promise<string> {
  await writeFleetFolder(folder, { units: 24, unitsPerGroup: 8, partitioned });
  for (const name of await readdir(folder, { recursive: true })) {
    if (!name.endsWith('readings.csv')) continue;
    const path = join(folder, name);
    const lines = (await readFile(path, 'utf8')).split('\n');
    await writeFile(path, lines.filter((line) => !line.includes(',tip_')).join('\n'));
  }
  return folder;
}

/** The partitioned analysis of a folder, as the command runs it; every folder by itself unless others are given room beside it. */
export async function analysed(data: string, out: string, threads: number, together_bytes = 0) {
  await mkdir(out, { recursive: true });
  const settings = { asOf: null, groupBy: 'frame', out, threads, memory_MB: 500, together_bytes } as const;
  return analyseParts(await readDataFolder(data), settings);
}

/** Text of every file in a folder, by name. */
export async function textsIn(folder: string): Promise<Readonly<Record<string, string>>> {
  const names = (await readdir(folder, { withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map(({ name }) => name);
  const texts = names.sort().map(async (name) => [name, await readFile(join(folder, name), 'utf8')] as const);
  return Object.fromEntries(await Promise.all(texts));
}
