import { appendFileSync, cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { stateVersion } from '../../../lib/batch/site/finishSite.mjs';
import { elsewhere, type NotingHost, plainHost } from '../../support/plainHosts';
import { opened, picture, sharedSite } from '../../support/sharedSite';
import { waysOut } from '../../support/waysOut';

const browser = sharedSite();
/** A copy of the site that may be changed, under a path, on a host that sends nothing but the files. */
const folder = mkdtempSync(join(tmpdir(), 'endfloat-offline-'));
const root = join(folder, 'out');
let host: NotingHost;
let outside: NotingHost;

beforeAll(async () => {
  cpSync('out', root, { recursive: true });
  host = await plainHost(root);
  outside = await elsewhere();
});
afterAll(async () => {
  await host.close();
  await outside.close();
  rmSync(folder, { recursive: true });
});

const demoAnswer = (page: Page) =>
  page
    .getByText(/of 52 units reach/)
    .first()
    .waitFor(opened);

/** What the page is made of: its own version, the version that answers for it, and a file that differs. */
function partsOf(
  page: Page,
): Promise<{ readonly version: string; readonly icon: string; readonly caches: number }> {
  return page.evaluate(async () => ({
    version: document.querySelector<HTMLMetaElement>('meta[name="site-version"]')?.content ?? '',
    icon: await (await fetch('/icon.svg')).text(),
    caches: (await caches.keys()).length,
  }));
}

it('works without the network after the first visit, and takes a newer version whole, once it is asked to', async () => {
  const context = await browser.browser.newContext({ timezoneId: 'UTC', locale: 'en-GB' });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(`${host.url}/`);
  await demoAnswer(page);
  const kept = page.getByText('Ready for use without the network.');
  await kept.waitFor(opened);
  const installable = await (await context.newCDPSession(page)).send('Page.getInstallabilityErrors');
  expect(installable.installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);

  await context.setOffline(true);
  host.reached.length = 0;
  await page.reload();
  await demoAnswer(page);
  await page.locator('figure [role=img] svg').first().waitFor(opened);
  const links = page.locator('nav[aria-label=Pages] a');
  await page.locator('[aria-label="Units"] tbody a').first().click();
  await page.getByRole('heading', { level: 1, name: /^Unit / }).waitFor(opened);
  await page.locator('figure [role=img] svg').first().waitFor(opened);
  await links.getByText('Records').click();
  await page
    .getByRole('row', { name: /readings\.csv/ })
    .first()
    .waitFor(opened);
  // The browser looks for a newer version by itself, and is not cut off as the pages are.
  expect(host.reached.filter((path) => path !== '/serviceWorker.js')).toEqual([]);

  await context.setOffline(false);
  expect(page.workers().length).toBeGreaterThanOrEqual(3);
  for (const worker of page.workers())
    expect(new Set(Object.values(await worker.evaluate(waysOut, outside.url))), worker.url()).toEqual(
      new Set(['refused']),
    );
  expect(outside.reached).toEqual([]);

  const old = await partsOf(page);
  expect(old.caches).toBe(1);
  appendFileSync(join(root, 'icon.svg'), '<!-- newer -->');
  stateVersion(root);
  await page.goto(`${host.url}/`);
  const notice = page.getByText('A new version is ready.');
  await notice.waitFor(opened);
  await picture(page, 'newer-version');
  expect(await partsOf(page)).toEqual({ ...old, caches: 2 });
  expect(await kept.isVisible()).toBe(false);
  const loaded = page.waitForEvent('load');
  await page.getByRole('button', { name: 'Reload' }).click();
  await loaded;
  await notice.waitFor({ state: 'detached' });
  const newer = await partsOf(page);
  expect(newer.version).not.toBe(old.version);
  expect(newer).toEqual({ version: newer.version, icon: `${old.icon}<!-- newer -->`, caches: 1 });
  expect(errors).toEqual([]);
  await context.close();
});
