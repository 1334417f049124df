import type { Page } from 'playwright-core';
import { opened, walkTo } from './sharedSite';

/** Every page of the site, those about a unit with one that has a finding. */
export const sitePages = [
  '/',
  '/unit/?id=O-3005',
  '/sisters/',
  '/drift/?unit=O-3005',
  '/spares/',
  '/bench/?id=O-3005',
  '/records/',
  '/tables/',
  '/report/',
  '/methods/',
  '/example/',
] as const;

/** Whether nothing is being opened, computed or drawn, as far as the page shows. */
function isAtRest(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const main = document.querySelector('main');
    if (main === null || document.querySelector('progress') !== null) return false;
    if (/follows here|is being read|Reading the records/.test(main.textContent ?? '')) return false;
    const pictures = [...main.querySelectorAll('[role=img]')].filter((one) => one.checkVisibility());
    // Drawn in other colours than the page has now, a picture is about to be drawn anew.
    const { backgroundColor } = getComputedStyle(document.documentElement);
    return pictures.every((one) => one.querySelector('svg > rect')?.getAttribute('fill') === backgroundColor);
  });
}

const pause_ms = 200;

/** Resolves once the page is at rest and stays so: an answer that has come may ask for the next one. */
export async function settled(page: Page): Promise<void> {
  const end = Date.now() + opened.timeout;
  for (let quiet = 0; quiet < 3; ) {
    if (Date.now() > end) throw new Error(`${page.url()} is still at work after ${opened.timeout} ms`);
    quiet = (await isAtRest(page)) ? quiet + 1 : 0;
    await page.waitForTimeout(pause_ms);
  }
}

/** Goes to a page of the site as a link does, and waits until it stands still. */
export async function visitPage(page: Page, address: string): Promise<void> {
  await walkTo(page, address);
  const { pathname } = new URL(address, page.url());
  // The page before stays until the next one is there; the title block changes with it.
  await page.waitForFunction(
    (path) => document.querySelector('nav [aria-current=page]')?.getAttribute('href') === path,
    pathname === '/example/' ? undefined : pathname,
    opened,
  );
  await settled(page);
}

/** Opens the site at its first page and waits until the demo fleet is there. */
export async function openFleet(page: Page, url: string): Promise<void> {
  await page.goto(`${url}/`);
  await page.locator('[aria-label="Units"] tbody tr').first().waitFor(opened);
  await settled(page);
}
