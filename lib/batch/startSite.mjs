import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { install } from './install.mjs';
import { buildSite } from './runCommand.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const site = join(root, 'out');
const usualPort = 4173;
const portsTried = 20;

/** Installs, builds and serves the site on this machine only, until it is told to stop: --port N (or PORT), --no-build. */
export async function startSite(args) {
  const { port, build } = readArguments(args);
  const problem = await install(root);
  if (problem !== null) fail(problem);
  if (build) {
    console.log('Building the site ...');
    const { code } = await buildSite(root);
    if (code !== 0) fail('The site could not be built: see the lines above.');
  }
  if (!existsSync(join(site, 'index.html')))
    fail('There is no built site yet: run npm start without --no-build.');
  const served = await serveOnFreePort(port);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
    process.on(signal, () => served.close().then(() => process.exit(0)));
  }
  console.log(`Endfloat is served on ${served.url}\nOpen it in a browser. Ctrl+C ends it.`);
}

function readArguments(args) {
  const options = { port: { type: 'string' }, 'no-build': { type: 'boolean' } };
  let values;
  try {
    ({ values } = parseArgs({ args, options }));
  } catch (error) {
    fail(`${error.message}\nUse: npm start -- [--port NUMBER] [--no-build]`, 2);
  }
  const named = values.port ?? process.env.PORT;
  const port = named === undefined || named === '' ? null : Number(named);
  if (port !== null && !(Number.isInteger(port) && port >= 0 && port <= 65_535)) {
    fail(`A port is a whole number from 0 to 65535, got '${named}'.`, 2);
  }
  return { port, build: values['no-build'] !== true };
}

/** A port that the user named is taken or refused; without one, the next free port after the usual one is taken, and said so. */
async function serveOnFreePort(named) {
  const { serveSite } = await import('./serveSite.mjs');
  const first = named ?? usualPort;
  const last = named === null ? usualPort + portsTried : first;
  for (let port = first; ; port++) {
    try {
      const served = await serveSite({ root: site, port });
      if (port !== first) console.log(`Port ${first} is taken by another program: using ${port} instead.`);
      return served;
    } catch (error) {
      const taken = error.code === 'EADDRINUSE';
      if (taken && port < last) continue;
      if (taken)
        fail(`Port ${port} is taken by another program. Choose another one: npm start -- --port ${port + 1}`);
      fail(
        `Port ${port} cannot be used (${error.code ?? error.message}). Choose another one: npm start -- --port ${usualPort}`,
      );
    }
  }
}

function fail(message, status = 1) {
  console.error(message);
  process.exit(status);
}
