import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { runCommand } from '../lib/batch/runCommand.mjs';

const names = ['chromium', 'chromium-browser', 'google-chrome'];

/** Path of a Chromium: CHROMIUM_PATH if set, else the first of its usual names; null if there is none. */
export function findChromium(env = process.env) {
  if (env.CHROMIUM_PATH) return isProgram(env.CHROMIUM_PATH) ? env.CHROMIUM_PATH : null;
  const folders = ['/usr/bin', ...(env.PATH ?? '').split(delimiter)];
  const paths = names.flatMap((name) => folders.map((folder) => join(folder, name)));
  return paths.find(isProgram) ?? null;
}

/** Finds Chromium, or installs it where that can be done without asking: Debian, as root. Returns { path } or { message }. */
export async function bringChromium() {
  const found = findChromium();
  if (found !== null) return { path: found };
  if (process.env.CHROMIUM_PATH)
    return { message: `CHROMIUM_PATH names no program: ${process.env.CHROMIUM_PATH}` };
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) {
    return { message: 'No Chromium found. Install the package chromium, or set CHROMIUM_PATH to one.' };
  }
  console.log('No Chromium found: installing the Debian packages chromium and fonts-dejavu-core ...');
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  const updated = await runCommand('apt-get', ['update', '-q'], { env });
  const installed = await runCommand('apt-get', ['install', '-y', '-q', 'chromium', 'fonts-dejavu-core'], {
    env,
  });
  const path = findChromium();
  if (path !== null) return { path };
  return {
    message: `Chromium could not be installed (apt-get update: ${updated.code}, install: ${installed.code}). Install it by hand, or set CHROMIUM_PATH.`,
  };
}

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
