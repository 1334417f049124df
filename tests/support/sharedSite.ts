import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { type OpenSite, openSite, patience_ms } from './openSite';

/** How long a page may take to open what it is asked for. */
export const opened = { timeout: patience_ms };

/** The built site for all tests of a file, served and closed with them. */
export function sharedSite(): Pick<OpenSite, 'url' | 'browser' | 'visit'> {
  let site: OpenSite;
  beforeAll(async () => {
    site = await openSite();
  });
  afterAll(() => site.close());
  return {
    get url() {
      return site.url;
    },
    get browser() {
      return site.browser;
    },
    visit: (size, serviceWorkers) => site.visit(size, serviceWorkers),
  };
}

/** Goes to an address of the site as a link in a page does: what is open stays open. */
export async function walkTo(page: Page, address: string): Promise<void> {
  await page.evaluate((to) => {
    const { next } = window as unknown as { next: { router: { push(address: string): void } } };
    next.router.push(to);
  }, address);
  await page.waitForURL((url) => `${url.pathname}${url.search}` === address);
}

/** Resolves once nothing is at work: what is shown is open, and not the answer of last time. */
export function atRest(page: Page): Promise<void> {
  return page.locator('progress').waitFor({ ...opened, state: 'detached' });
}

/** Where pictures are kept for a person to look at, if anywhere. */
const pictures = process.env.PICTURES;

/** Keeps a picture of the page for a person to look at, if asked for. */
export async function picture(page: Page, name: string): Promise<void> {
  if (pictures === undefined) return;
  mkdirSync(pictures, { recursive: true });
  await page.screenshot({ path: join(pictures, `${name}.png`) });
}
