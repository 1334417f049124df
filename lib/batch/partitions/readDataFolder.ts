import { readdir } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { UnusableArguments } from '../runMain';

/** A file of the input by its name below the folder, `/` between folders. */
export interface DataFile {
  readonly name: string;
  readonly path: string;
}

/** One folder of a partitioned input. */
export interface Part {
  readonly name: string;
  readonly files: readonly DataFile[];
}

/** What a folder holds: files of the whole fleet, and a part a folder below it; a flat folder has no parts. */
export interface DataFolder {
  readonly shared: readonly DataFile[];
  readonly parts: readonly Part[];
}

/** Tables of single units: a folder below that holds one of them is a part; any other is not looked into. */
const ofUnits = /(^|\/)(units|overhauls|readings)\.(csv|parquet)$/i;

/**
 * Lists the CSV and Parquet files of a folder and of its parts, in order of name.
 *
 * @throws UnusableArguments if the folder cannot be read, holds no such file, or has tables of units beside its parts
 */
export async function readDataFolder(folder: string): Promise<DataFolder> {
  let entries: { readonly name: string; readonly folder: string }[];
  try {
    entries = (await readdir(folder, { recursive: true, withFileTypes: true }))
      .filter((entry) => entry.isFile() && /\.(csv|parquet)$/i.test(entry.name))
      .map((entry) => ({ name: entry.name, folder: entry.parentPath }));
  } catch (error) {
    throw new UnusableArguments(
      `--data: the folder '${folder}' cannot be read (${error instanceof Error ? error.message : error})`,
    );
  }
  const files = entries
    .map((entry) => join(entry.folder, entry.name))
    .map((path) => ({ name: relative(folder, path).split(sep).join('/'), path }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
  const parts = new Map<string, DataFile[]>();
  for (const file of files) {
    const part = dirname(file.name);
    parts.set(part, [...(parts.get(part) ?? []), file]);
  }
  const shared = parts.get('.') ?? [];
  parts.delete('.');
  const ofFleet = [...parts].filter(([, own]) => own.some(({ name }) => ofUnits.test(name)));
  const beside = shared.find(({ name }) => ofUnits.test(name));
  if (ofFleet.length > 0 && beside !== undefined)
    throw new UnusableArguments(
      `--data: '${beside.name}' lies beside the folder '${ofFleet[0]?.[0]}', which has tables of units too: put it into a folder of its own, or take the folders elsewhere`,
    );
  if (ofFleet.length === 0 && shared.length === 0) throw noFile(folder);
  return { shared, parts: ofFleet.map(([name, own]) => ({ name, files: own })) };
}

function noFile(folder: string): UnusableArguments {
  return new UnusableArguments(`--data: the folder '${folder}' holds no .csv file and no .parquet file`);
}
