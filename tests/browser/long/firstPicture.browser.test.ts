import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { dropFiles } from '../../support/openSite';
import { atRest, opened, sharedSite } from '../../support/sharedSite';

const site = sharedSite();

const own = ['kestrel-wide.csv', 'limits.csv'].map((name) => ({
  name,
  content: readFileSync(join('data', 'examples', name)),
}));

/** Holds the database engine back until the returned function is called. */
async function withoutEngine(page: Page): Promise<() => void> {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route('**/engine/*', async (route) => {
    await held;
    await route.continue();
  });
  return release;
}

const answer = (page: Page) => page.locator('p.answer').first();
const units = (page: Page) => page.getByRole('table', { name: /Units by what cannot wait/ });
const picture = (page: Page) =>
  page.getByRole('img', { name: 'Chance that the first limit is met, by date' }).locator('svg');

async function shown(page: Page) {
  await picture(page).waitFor(opened);
  return { sentence: await answer(page).textContent(), rows: await units(page).textContent() };
}

describe('the answer before the database engine is there', () => {
  it('of the demo fleet stands in the page itself: sentence and picture, no script of the site loaded, few bytes', async () => {
    const context = await site.browser.newContext({
      viewport: { width: 1366, height: 768 },
      locale: 'en-GB',
    });
    const page = await context.newPage();
    let received_bytes = 0;
    const session = await context.newCDPSession(page);
    await session.send('Network.enable');
    session.on('Network.loadingFinished', ({ encodedDataLength }) => {
      received_bytes += encodedDataLength;
    });
    await page.goto(`${site.url}/`, { waitUntil: 'commit' });
    const drawn = page.locator('[data-first="picture"] svg');
    await drawn.waitFor(opened);
    expect(received_bytes).toBeLessThan(400_000);
    expect(await page.locator('script[src]').evaluateAll((scripts) => scripts.length)).toBeLessThan(2);
    expect(await answer(page).textContent()).toMatch(/^\d+ of 52 units reach a limit/);
    expect(await drawn.locator('text').count()).toBeGreaterThan(100);
    // Nobody stirs: it is made live all the same.
    await units(page).waitFor(opened);
    await context.close();
  });

  it('is that of the demo fleet at a first visit, and of own files at the next, the same as is computed then', async () => {
    const { page, context, errors, outside } = await site.visit();
    const release = await withoutEngine(page);
    await page.goto(`${site.url}/`);
    const prepared = await shown(page);
    await page.getByText('was computed when this site was built').waitFor(opened);
    expect(prepared.sentence).toMatch(/^\d+ of 52 units reach a limit/);
    release();
    await atRest(page);
    expect(await shown(page)).toEqual(prepared);

    await page.goto(`${site.url}/records/`);
    await page.getByText('was computed when this site was built').waitFor(opened);
    // Nobody has to wait for the demo fleet with files in hand.
    await dropFiles(page, own);
    await page.getByText('Your files: 2 files').waitFor(opened);
    await page.getByRole('link', { name: 'Fleet', exact: true }).click();
    const computed = await shown(page);
    await page.close();

    const next = await context.newPage();
    const releaseNext = await withoutEngine(next);
    await next.goto(`${site.url}/`);
    await next.getByText('is the answer of last time').waitFor(opened);
    expect(await shown(next)).toEqual(computed);
    releaseNext();
    await atRest(next);
    expect(await shown(next)).toEqual(computed);
    expect([errors, outside]).toEqual([[], []]);
  });
});
