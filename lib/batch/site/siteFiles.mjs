import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/** Name of the service worker's file, at the root of the site, so that it answers for the whole of it. */
export const serviceWorkerName = 'serviceWorker.js';

/** Files below a folder, such as a built site, `/` between folders, in order of name. */
export function siteFiles(root) {
  return readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/**
 * Hash of the bytes of every file that the site's pages may ask for, by its address below the root: a folder stands for its
 * index.html. Left out are the service worker itself and 404.html, which hosts serve in ways of their own (its copy stays).
 */
export function fileHashes(root) {
  const names = siteFiles(root).filter((name) => name !== serviceWorkerName && name !== '404.html');
  return Object.fromEntries(
    names.map((name) => [
      encodeURI(name.replace(/(^|\/)index\.html$/, '$1')),
      `sha256-${createHash('sha256')
        .update(readFileSync(join(root, name)))
        .digest('base64')}`,
    ]),
  );
}

/** One version of the site: a hash of all its files. */
export function versionOf(hashes) {
  return createHash('sha256').update(JSON.stringify(hashes)).digest('hex').slice(0, 16);
}
