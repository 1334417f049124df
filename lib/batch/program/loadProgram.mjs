import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildProgram } from './buildProgram.mjs';
import { programHash, root } from './programHash.mjs';

const entries = {
  analyse: 'lib/batch/analyse.ts',
  partThread: 'lib/batch/partitions/partThread.ts',
};

/** Runs one of the programs in TypeScript, as plain JavaScript; where that cannot be built, as it is, which takes seconds longer. */
export async function loadProgram(name) {
  let folder;
  try {
    folder = await buildProgram(root, entries, programHash());
  } catch {
    // Whatever is wrong with a source is said here, with its place.
    const { register } = await import('tsx/esm/api');
    register();
    return import(pathToFileURL(join(root, entries[name])).href);
  }
  return import(pathToFileURL(join(folder, `${name}.mjs`)).href);
}
