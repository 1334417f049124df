import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { serveSite } from '../../lib/batch/serveSite.mjs';
import { findChromium } from '../chromium.mjs';

export const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** How long a page may take to do what it is asked for, ms: a crowded machine stands still for a minute now and then. */
export const patience_ms = 90_000;

/** The built site, served, and a browser to use it with. */
export interface OpenSite {
  readonly url: string;
  readonly browser: Browser;
  /** A new visitor: empty storage, time zone and locale pinned; the site is kept for use without the network if allowed, which takes its time. */
  visit(size?: { width: number; height: number }, serviceWorkers?: 'allow' | 'block'): Promise<Visit>;
  close(): Promise<void>;
}

export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Addresses asked for outside the site's own origin; data and blob addresses never leave the page. */
  readonly outside: string[];
  /** Errors of the page's scripts. */
  readonly errors: string[];
}

/** Serves out/ on a free port and starts Chromium. */
export async function openSite(): Promise<OpenSite> {
  const root = join(process.cwd(), 'out');
  if (!existsSync(join(root, 'index.html')))
    throw new Error('out/ holds no built site: run npm run build first');
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('no Chromium found: install it or set CHROMIUM_PATH');
  const site = await serveSite({ root, port: 0 });
  const browser: Browser = await chromium.launch({ executablePath, args: flags });
  return {
    url: site.url.replace(/\/$/, ''),
    browser,
    async visit(size = { width: 1366, height: 768 }, serviceWorkers = 'block') {
      const context = await browser.newContext({
        viewport: size,
        timezoneId: 'UTC',
        locale: 'en-GB',
        serviceWorkers,
      });
      context.setDefaultTimeout(patience_ms);
      // A reader with a hand on the mouse: what waits for a sign of life does not wait.
      await context.addInitScript(() =>
        addEventListener('load', () => dispatchEvent(new Event('pointermove'))),
      );
      const page = await context.newPage();
      const outside: string[] = [];
      const errors: string[] = [];
      context.on('request', (request) => {
        const address = request.url();
        if (!address.startsWith(site.url) && !/^(data|blob):/.test(address)) outside.push(address);
      });
      page.on('pageerror', (error) => errors.push(error.message));
      return { page, context, outside, errors };
    },
    async close() {
      await browser.close();
      await site.close();
    },
  };
}

/** A file to drop, as text or as bytes. */
export interface DroppedTestFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** Drops files on the page as a hand does: a real drop event with a DataTransfer. */
export async function dropFiles(page: Page, files: readonly DroppedTestFile[]): Promise<void> {
  const encoded = files.map(({ name, content }) => ({
    name,
    base64: Buffer.from(content).toString('base64'),
  }));
  const transfer = await page.evaluateHandle((given) => {
    const data = new DataTransfer();
    for (const file of given) {
      const bytes = Uint8Array.from(atob(file.base64), (letter) => letter.charCodeAt(0));
      data.items.add(new File([bytes], file.name, { type: 'text/csv' }));
    }
    return data;
  }, encoded);
  await page.dispatchEvent('main', 'dragover', { dataTransfer: transfer });
  await page.dispatchEvent('main', 'drop', { dataTransfer: transfer });
}
