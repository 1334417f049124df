import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { siteFiles } from './siteFiles.mjs';

const sources = ['app', 'lib', 'next.config.mjs', 'package-lock.json'];

/** One build of the site: a hash of what it is made from, so that the same sources give the same version. */
export function sourceHash(root) {
  const hash = createHash('sha256').update(process.env.SITE_PATH ?? '');
  for (const source of sources) {
    const path = join(root, source);
    const files = statSync(path).isDirectory() ? siteFiles(path).map((name) => join(path, name)) : [path];
    for (const file of files) hash.update(file.slice(root.length)).update(readFileSync(file));
  }
  return hash.digest('hex').slice(0, 20);
}
