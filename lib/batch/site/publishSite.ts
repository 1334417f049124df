import { existsSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { InputFile } from '../../records/importReport';
import { UnusableArguments } from '../runMain';
import { nameSiteFleet, stateVersion } from './finishSite.mjs';
import { packAnswers } from './packAnswers';
import { paintFirst } from './paintFirst.mjs';
import { withPolicyAnew } from './policy.mjs';
import { serviceWorkerName } from './siteFiles.mjs';

/** What pages call the fleet of such a site. */
const fleetName = 'fleet of this site';

/**
 * Makes a ready static site of a fleet: the built site with these files in place of the demo's and the answers of now, which a
 * first visit shows at once while the files are fetched from the same origin and computed again.
 *
 * The site is there as a whole or stays as it was. It opens with the usual settings: latest date in the data, sister groups by frame.
 *
 * @param built the folder that the build made
 * @throws UnusableArguments if there is no built site, the folder holds something else than a site, or a name cannot be an address
 */
export async function publishSite(built: string, files: readonly InputFile[], to: string): Promise<void> {
  await checkFolders(built, to);
  const fleet = files.map(({ name, bytes }) => ({ name: addressOf(name), bytes }));
  const making = `${to}.part`;
  await rm(making, { recursive: true, force: true });
  await mkdir(dirname(making), { recursive: true });
  const demo = join(built, 'demo');
  await cp(built, making, {
    recursive: true,
    filter: (from) => from !== demo && !from.startsWith(join(demo, '/')),
  });
  const folder = join(making, 'demo');
  await mkdir(folder);
  for (const { name, bytes } of fleet) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), bytes);
  }
  await writeFile(
    join(folder, 'index.json'),
    `${JSON.stringify(
      fleet.map(({ name }) => name),
      null,
      1,
    )}\n`,
  );
  await packAnswers(fleet, folder);
  paintFirst(making);
  // A built program writes the same functions in other words than the build of the site did.
  const page = join(making, 'index.html');
  await writeFile(page, withPolicyAnew(await readFile(page, 'utf8')));
  nameSiteFleet(making, fleetName);
  stateVersion(making);
  await rm(to, { recursive: true, force: true });
  await rename(making, to);
}

async function checkFolders(built: string, to: string): Promise<void> {
  if (!existsSync(join(built, serviceWorkerName)))
    throw new UnusableArguments('--site requires a built site: run npm run build first');
  if (existsSync(to) && (await readdir(to)).length > 0 && !existsSync(join(to, serviceWorkerName)))
    throw new UnusableArguments(
      `--site: the folder '${to}' holds something else than a site: name another one`,
    );
}

/** A Parquet file is there as the CSV text that it was read as: the browser's database has no Parquet. */
function addressOf(name: string): string {
  if (/[#?%\\]/.test(name))
    throw new UnusableArguments(
      `--site: the name '${name}' cannot be part of an address: leave out # ? % and \\`,
    );
  return name.replace(/\.parquet$/i, '.csv');
}
