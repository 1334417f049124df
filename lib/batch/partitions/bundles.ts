import { stat } from 'node:fs/promises';
import type { DataFile, Part } from './readDataFolder';

/** Folders that are analysed in one database. */
export interface Bundle extends Part {
  readonly folders: readonly string[];
}

/** Files of so many bytes are a good load for one database: beyond it what each costs by itself no longer shows. */
const goodLoad_bytes = 12_000_000;
/** A small fleet is still shared out. */
const fewestBundles = 4;

/** One folder by itself. */
export function bundleOf(part: Part): Bundle {
  return { ...part, folders: [part.name] };
}

/**
 * Puts small folders together in their order, since each database costs a quarter of a second by itself, whatever it holds. How they
 * are put together depends on the data only, so that a run with other threads goes on with what is kept.
 *
 * @param alone folders that must stay by themselves
 * @param most bytes of a bundle of several folders; by default what suits their size
 */
export async function bundlesOf(
  parts: readonly Part[],
  alone: ReadonlySet<string>,
  most?: number,
): Promise<readonly Bundle[]> {
  const sizes = await Promise.all(parts.map(({ files }) => bytesOf(files)));
  const all = sizes.reduce((sum, size) => sum + size, 0);
  const load = most ?? Math.min(goodLoad_bytes, all / fewestBundles);
  const bundles: Bundle[] = [];
  let filled = Number.POSITIVE_INFINITY;
  for (const [place, part] of parts.entries()) {
    const size = sizes[place] as number;
    const last = bundles.at(-1);
    if (last === undefined || alone.has(part.name) || filled + size > load) {
      bundles.push(bundleOf(part));
      filled = alone.has(part.name) ? Number.POSITIVE_INFINITY : size;
      continue;
    }
    filled += size;
    const files = [...last.files, ...part.files];
    const folders = [...last.folders, part.name];
    bundles[bundles.length - 1] = { name: `${folders[0]} to ${part.name}`, files, folders };
  }
  return bundles;
}

async function bytesOf(files: readonly DataFile[]): Promise<number> {
  const sizes = await Promise.all(files.map(({ path }) => stat(path)));
  return sizes.reduce((sum, { size }) => sum + size, 0);
}
