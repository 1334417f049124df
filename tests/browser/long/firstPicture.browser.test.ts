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
