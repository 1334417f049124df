import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { paintFirst } from './paintFirst.mjs';
import { withPolicy, workerPolicy } from './policy.mjs';
import { fileHashes, serviceWorkerName, siteFiles, versionOf } from './siteFiles.mjs';

const source = fileURLToPath(new URL('./serviceWorker.js', import.meta.url));

const fleetMeta = /<meta name="site-fleet" content="[^"]*"\/>/;
const versionMeta = /<meta name="site-version" content="[^"]*"\/>/;

/** Makes the built site complete: the first answer in its page, a policy and the version in every page, and the service worker that keeps that version. */
export function finishSite(root) {
  paintFirst(root);
  changePages(root, withPolicy);
  stateVersion(root);
}

/** Writes what the fleet that comes with the site is called into every page, in place of an older name; its version is to be stated anew. */
export function nameSiteFleet(root, name) {
  changePages(root, (html) =>
    html.replace(fleetMeta, '').replace('</title>', `</title><meta name="site-fleet" content="${name}"/>`),
  );
}

/** Writes the version that the files make into every page, in place of an older one, and the service worker that keeps it. */
export function stateVersion(root) {
  changePages(root, (html) => html.replace(versionMeta, ''));
  const version = versionOf(fileHashes(root));
  changePages(root, (html) =>
    html.replace('</title>', `</title><meta name="site-version" content="${version}"/>`),
  );
  writeServiceWorker(root, version);
}

function changePages(root, change) {
  for (const name of siteFiles(root).filter((one) => one.endsWith('.html'))) {
    const path = join(root, name);
    writeFileSync(path, change(readFileSync(path, 'utf8')));
  }
}

/** The file names what is kept: a page of another version is not taken for one of this. */
function writeServiceWorker(root, version) {
  const site = { version, workerPolicy, files: fileHashes(root) };
  const text = `const site = ${JSON.stringify(site, null, 1)};\n\n${readFileSync(source, 'utf8')}`;
  writeFileSync(join(root, serviceWorkerName), text);
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  finishSite(fileURLToPath(new URL('../../../out', import.meta.url)));
