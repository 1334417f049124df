import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runNpm } from './runCommand.mjs';

/**
 * Brings node_modules to what package-lock.json states; does nothing if it is there already.
 * Returns null, or a message that says what happened and what to do.
 */
export async function install(root) {
  if (isInstalled(root)) return null;
  console.log('Installing the packages that package-lock.json states (npm ci) ...');
  const { code, output, error } = await runNpm(['ci', '--no-audit', '--no-fund'], {
    cwd: root,
    capture: true,
  });
  return code === 0 ? null : whyNotInstalled(output, error);
}

/** Whether every package of the lock file is installed in its version; npm notes what it installed in node_modules/.package-lock.json. */
export function isInstalled(root) {
  const note = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(note)) return false;
  const wanted = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  const installed = JSON.parse(readFileSync(note, 'utf8')).packages;
  return Object.entries(wanted).every(([path, { version, optional }]) => {
    if (path === '') return true;
    const found = installed[path];
    // Optional packages are those of other processors and systems.
    return found === undefined
      ? optional === true
      : found.version === version && existsSync(join(root, path));
  });
}

const unreachable =
  /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|ERR_SOCKET_TIMEOUT|SELF_SIGNED|CERT_|network/;

/** What to tell the user, from npm's own words. */
export function whyNotInstalled(output, error) {
  if (error?.code === 'ENOENT')
    return 'npm was not found. It comes with Node.js: install Node.js again, with npm.';
  if (error !== undefined) return `npm could not be started: ${error.message}`;
  if (unreachable.test(output)) {
    return 'The packages could not be fetched: the npm registry did not answer. Check the network, and the proxy or registry that npm is set to (npm config get registry), then run the command again. Once installed, no network is needed.';
  }
  if (/EUSAGE|in sync/.test(output)) {
    return 'package.json and package-lock.json do not agree: run npm install once, then the command again.';
  }
  if (/ENOSPC/.test(output)) return 'The disk is full: free about 1 GB, then run the command again.';
  if (/EACCES|EPERM/.test(output)) {
    return 'The packages could not be written: the folder belongs to someone else. Take a copy that you may write to, then run the command again.';
  }
  return 'The packages could not be installed: see the lines of npm above.';
}
