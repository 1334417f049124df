import type { InputFile } from '../importReport';
import { sha256 } from './sha256';

/** Two sets of files put together: ours first, then those of theirs that we do not have. */
export interface MergedFiles {
  readonly files: readonly InputFile[];
  /** Name in the merged set of every file of theirs. */
  readonly names: ReadonlyMap<string, string>;
  /** Names, in the merged set, of files that only they have. */
  readonly added: readonly string[];
}

/**
 * Puts two sets of files together by SHA-256 of their content: the same content is one file under our name; a file of theirs
 * that shares a name with another content of ours gets a number.
 */
export async function mergeFiles(
  ours: readonly InputFile[],
  theirs: readonly InputFile[],
): Promise<MergedFiles> {
  const known = new Map<string, string>();
  const taken = new Set(ours.map(({ name }) => name));
  for (const { name, bytes } of ours) {
    const content = await sha256(bytes);
    known.set(content, known.get(content) ?? name);
    // Of two equal files the one of their name is meant, if there is one.
    known.set(`${content} ${name}`, name);
  }
  const names = new Map<string, string>();
  const added: InputFile[] = [];
  for (const { name, bytes } of theirs) {
    const content = await sha256(bytes);
    const same = known.get(`${content} ${name}`) ?? known.get(content);
    const merged = same ?? freeName(name, taken);
    names.set(name, merged);
    if (same !== undefined) continue;
    taken.add(merged);
    added.push({ name: merged, bytes });
  }
  return { files: [...ours, ...added], names, added: added.map(({ name }) => name) };
}

function freeName(name: string, taken: ReadonlySet<string>): string {
  for (let number = 2, free = name; ; number++) {
    if (!taken.has(free)) return free;
    free = name.replace(/(\.[^./]*)?$/, ` (${number})$1`);
  }
}
