import { stat } from 'node:fs/promises';
import type { DataFile, Part } from './readDataFolder';

/** Folders that are analysed in one database. */
export interface Bundle extends Part {
  readonly folders: readonly string[];
}

/** Files of so many bytes are a good load for one share: beyond it what each costs by itself hardly shows, and its memory does. */
const goodLoad_bytes = 24_000_000;
/** Bundles come in this number or a multiple of it, all of much the same size, so that no thread waits for another's last one. */
const sharedBy = 4;

/** One folder by itself. */
export function bundleOf(part: Part): Bundle {
  return { ...part, folders: [part.name] };
}

/**
 * Puts small folders together in their order, since a share costs a quarter of a second by itself, whatever it holds. How they
 * are put together depends on the data only, so that a run with other threads goes on with what is kept.
 *
 * @param alone folders that must stay by themselves
 * @param load bytes that a bundle should have at the most, give or take half a folder at its ends; by default what suits their size
 */
export async function bundlesOf(
  parts: readonly Part[],
  alone: ReadonlySet<string>,
  load?: number,
): Promise<readonly Bundle[]> {
  const sizes = await Promise.all(parts.map(({ files }) => bytesOf(files)));
  const all = sizes.reduce((sum, size) => sum + size, 0);
  const count =
    load === undefined ? sharedBy * Math.ceil(all / (sharedBy * goodLoad_bytes)) : Math.ceil(all / load);
  const share = all / count;
  const bundles: Bundle[] = [];
  let before = 0;
  let isOpen = false;
  for (const [place, part] of parts.entries()) {
    const size = sizes[place] as number;
    const last = bundles.at(-1);
    // The bundle that the middle of the folder falls into, of shares of one size laid end to end.
    const begun = Math.floor((before - (sizes[place - 1] ?? 0) / 2) / share);
    const isNext = share === 0 || Math.floor((before + size / 2) / share) !== begun;
    before += size;
    if (last === undefined || alone.has(part.name) || !isOpen || isNext) {
      bundles.push(bundleOf(part));
      isOpen = !alone.has(part.name);
      continue;
    }
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
