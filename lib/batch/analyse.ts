import { mkdir } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type GroupBy, groupings, isGroupBy } from '../analysis/grouping/sisterGroupOf';
import { isIsoDay } from '../analysis/isoDate';
import { partCorrected } from '../records/decisions/correctedFiles';
import type { InputFile } from '../records/importReport';
import { analyseFlat } from './analyseFlat';
import { analyseParts } from './partitions/analyseParts';
import { readDataFile } from './partitions/readDataFile';
import { type DataFolder, readDataFolder } from './partitions/readDataFolder';
import { runMain, UnusableArguments } from './runMain';

const usage = `Usage: npm run -s analyse -- --data DIR [--as-of YYYY-MM-DD] [--group frame|frame+site|frame+duty] [--threads N] [--memory MB] [--site DIR] [--warehouse FILE.json] --out DIR`;

const builtSite = fileURLToPath(new URL('../../out', import.meta.url));
/** Memory of each thread's database if none is given. */
const usualMemory_MB = 1000;

interface Arguments {
  readonly data: string;
  readonly out: string;
  readonly asOf: string | null;
  readonly groupBy: GroupBy;
  readonly threads: number;
  readonly memory_MB: number;
  /** Folder of the static site to be made; null: none. */
  readonly site: string | null;
  /** File that says where the readings are, if they are not in the folder. */
  readonly warehouse: string | null;
}

function readArguments(words: readonly string[]): Arguments {
  const options = {
    data: { type: 'string' },
    out: { type: 'string' },
    'as-of': { type: 'string' },
    group: { type: 'string' },
    threads: { type: 'string' },
    memory: { type: 'string' },
    site: { type: 'string' },
    warehouse: { type: 'string' },
  } as const;
  let values: Partial<Record<keyof typeof options, string>>;
  try {
    values = parseArgs({ args: [...words], options }).values;
  } catch (error) {
    throw new UnusableArguments(error instanceof Error ? error.message : String(error));
  }
  const { data, out, 'as-of': asOf = null, group = 'frame', site = null, warehouse = null } = values;
  if (data === undefined)
    throw new UnusableArguments('--data is missing: name the folder with the CSV files');
  if (out === undefined) throw new UnusableArguments('--out is missing: name the folder to write to');
  if (asOf !== null && !isIsoDay(asOf)) {
    throw new UnusableArguments(`--as-of requires a date of the form YYYY-MM-DD, got '${asOf}'`);
  }
  if (!isGroupBy(group)) {
    throw new UnusableArguments(`--group requires one of ${groupings.join(', ')}, got '${group}'`);
  }
  const threads = wholeNumber('--threads', values.threads, availableParallelism(), 1);
  const memory_MB = wholeNumber('--memory', values.memory, usualMemory_MB, 200);
  return { data, out, asOf, groupBy: group, threads, memory_MB, site, warehouse };
}

function wholeNumber(name: string, text: string | undefined, usual: number, least: number): number {
  const number = text === undefined ? usual : Number(text);
  if (!Number.isInteger(number) || number < least)
    throw new UnusableArguments(`${name} requires a whole number from ${least}, got '${text}'`);
  return number;
}

/** The batch command: canonical files in, tables of results out. Returns the exit status. */
async function main(words: readonly string[]): Promise<number> {
  const settings = readArguments(words);
  const { warehouse } = settings;
  const data = await readDataFolder(settings.data);
  // What most runs do without is loaded when it is asked for: the pages alone are half of the program.
  if (warehouse !== null) {
    const { analyseWarehouse } = await import('./warehouse/analyseWarehouse');
    return analyseWarehouse(data, { ...settings, warehouse });
  }
  await mkdir(settings.out, { recursive: true });
  const status = await (data.parts.length === 0
    ? analyseFlat(data.shared, settings)
    : partitioned(data, settings));
  if (status === 0 && settings.site !== null) await publish(data, settings.site);
  return status;
}

/** Pages take the whole fleet in at once, so here the parts are put together. */
async function publish({ shared, parts }: DataFolder, site: string): Promise<void> {
  const files: InputFile[] = [];
  for (const file of [...shared, ...parts.flatMap((part) => part.files)])
    files.push(await readDataFile(file));
  const { corrected } = partCorrected(files, '');
  if (corrected.length > 0)
    throw new UnusableArguments(
      `--site takes no corrected rows (${corrected.map(({ file }) => file).join(', ')}): correct the files themselves`,
    );
  const { publishSite } = await import('./site/publishSite');
  await publishSite(builtSite, files, site);
  process.stdout.write(`The site is in ${site}\n`);
}

async function partitioned(data: DataFolder, settings: Arguments): Promise<number> {
  const shared = await Promise.all(data.shared.map(readDataFile));
  const { corrected } = partCorrected(shared, '');
  if (corrected.length > 0)
    throw new UnusableArguments(
      `--data: corrected rows (${corrected.map(({ file }) => file).join(', ')}) are taken in a folder without further folders only: correct the files themselves`,
    );
  const outcome = await analyseParts(data, settings);
  if (!outcome.ok) {
    const lines = outcome.unusable.flatMap(({ part, reasons }) => [
      `${part}: no reading in this folder can be used.`,
      ...reasons.map((reason) => `  ${reason}`),
    ]);
    process.stderr.write(`${lines.join('\n')}\nOnly problems.csv is written: settle them and run again\n`);
    return 2;
  }
  const sum = (of: 'units' | 'readingsUsed' | 'readingsHeld') =>
    outcome.parts.reduce((total, part) => total + part[of], 0);
  const folders = outcome.parts.reduce((total, part) => total + part.folders.length, 0);
  process.stdout.write(
    `${sum('units')} units in ${folders} folders, ${sum('readingsUsed')} readings used, ${sum('readingsHeld')} held, as of ${outcome.asOf}; written to ${settings.out}\n`,
  );
  return 0;
}

await runMain(main, usage);
