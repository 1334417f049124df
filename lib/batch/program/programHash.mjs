import { fileURLToPath } from 'node:url';
import { getEnvironmentData, setEnvironmentData } from 'node:worker_threads';
import { sourceHash } from '../site/sourceHash.mjs';

const name = 'endfloat: hash of the program';

/** Folder of the project. */
export const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Hash of the sources of this program as they were when it began: its threads take it over and do not read them again. */
export function programHash() {
  const known = getEnvironmentData(name);
  if (typeof known === 'string') return known;
  const hash = sourceHash(root);
  setEnvironmentData(name, hash);
  return hash;
}
