import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { accessFaultsOf } from '../../support/accessFaultsOf';
import { dropFiles } from '../../support/openSite';
import { opened, picture, sharedSite } from '../../support/sharedSite';
import { openFleet, settled, sitePages, visitPage } from '../../support/sitePages';

const site = sharedSite();

const full = { width: 1366, height: 768 };
const plain = { colorScheme: 'light', reducedMotion: 'no-preference', forcedColors: 'none' } as const;

/** How a page is looked at: size of the window in CSS px, and what the reader asks of colours and motion. */
const ways = [
  { name: 'light', size: full, media: plain },
  { name: 'dark', size: full, media: { ...plain, colorScheme: 'dark' } },
  // 1366 px at 200 %.
  { name: 'zoomed', size: { width: 683, height: 384 }, media: plain },
  { name: 'narrow', size: { width: 320, height: 640 }, media: plain },
  { name: 'still', size: full, media: { ...plain, reducedMotion: 'reduce' } },
  { name: 'forced', size: full, media: { ...plain, forcedColors: 'active' } },
] as const;

const exampleFiles = ['kestrel-wide.csv', 'limits.csv', 'sheets/02-long-hundredths.csv'].map((path) => ({
  name: path.replace(/.*\//, ''),
  content: readFileSync(`data/examples/${path}`),
}));

/** A state of a page worth a look of its own: its name and how one gets there from the Records page. */
interface PageState {
  readonly name: string;
  readonly reach: (page: Page) => Promise<void>;
}

const ownStates: readonly PageState[] = [
  {
    name: 'own files',
    reach: async (page) => {
      await dropFiles(page, exampleFiles);
      await page.getByText(/Your 3 files are open/).waitFor(opened);
    },
  },
  {
    name: 'a question before removing',
    reach: async (page) => {
      await page.getByRole('button', { name: 'Remove my files from this browser' }).click();
      await page.getByRole('dialog').waitFor();
    },
  },
  {
    name: 'columns being corrected',
    reach: async (page) => {
      await page.keyboard.press('Escape');
      await page
        .getByText(/columns used/)
        .first()
        .click();
      await page
        .getByRole('button', { name: /^Correct the columns/ })
        .first()
        .click();
      await page
        .getByRole('dialog')
        .getByText(/In the whole file/)
        .waitFor(opened);
    },
  },
  {
    name: 'a file that cannot be read',
    reach: async (page) => {
      await page.keyboard.press('Escape');
      await dropFiles(page, [
        { name: 'broken.csv', content: Uint8Array.from([0, 255, 254, 1, 2, 3, 10, 7]) },
      ]);
      await page
        .locator('main')
        .getByText(/broken\.csv/)
        .first()
        .waitFor(opened);
    },
  },
  {
    name: 'a cell being edited',
    reach: async (page) => {
      await visitPage(page, '/tables/');
      await page.locator('[data-place="0 3"]').click();
      await page.keyboard.press('Control+A');
      await page.keyboard.type('0,25');
      await page.keyboard.press('Enter');
      await page.getByText('Write 0.25 with a decimal point.').waitFor();
    },
  },
];

const demoStates: readonly PageState[] = [
  {
    name: 'no unit passes the filters',
    reach: async (page) => {
      await visitPage(page, '/?units=NONE');
      await page.getByText('not in the data: NONE').waitFor();
    },
  },
  { name: 'no held cell passes the filters', reach: (page) => visitPage(page, '/records/?file=none.csv') },
  { name: 'no unit chosen', reach: (page) => visitPage(page, '/unit/') },
  { name: 'an unknown unit', reach: (page) => visitPage(page, '/unit/?id=NONE') },
  { name: 'no bench chosen', reach: (page) => visitPage(page, '/bench/') },
  {
    name: 'a word explained',
    reach: async (page) => {
      await visitPage(page, '/');
      await page.locator('[data-term=limit]').first().focus();
      await page.locator('#note-limit').waitFor();
    },
  },
  {
    name: 'columns chosen',
    reach: async (page) => {
      await page.keyboard.press('Escape');
      await page
        .getByRole('button', { name: /^Columns of/ })
        .first()
        .click();
      await page.getByText('Columns shown;').waitFor();
    },
  },
  {
    name: 'units found',
    reach: async (page) => {
      await page.getByRole('combobox', { name: 'Find a unit' }).fill('o30');
      await page.getByRole('listbox').waitFor();
    },
  },
];

describe('every page is accessible in every state', () => {
  it.each(sitePages)('%s: light, dark, zoomed, narrow, still and in forced colours', async (address) => {
    const page = await fleetPage();
    const faults: string[] = [];
    await visitPage(page, address);
    for (const { name, size, media } of ways) {
      await page.setViewportSize(size);
      await page.emulateMedia(media);
      await settled(page);
      await picture(page, `access${address.replace(/\W+/g, '-')}-${name}`);
      faults.push(...(await accessFaultsOf(page, 'best-practice')).map((fault) => `${name}: ${fault}`));
    }
    await page.setViewportSize(full);
    await page.emulateMedia(plain);
    expect(faults).toEqual([]);
  });

  it('with own files, dialogs open, files that cannot be read, nothing found and a cell being edited', async () => {
    const page = await fleetPage();
    const faults: string[] = [];
    const look = async ({ name, reach }: PageState) => {
      await reach(page);
      await picture(page, `state-${name.replaceAll(' ', '-')}`);
      faults.push(...(await accessFaultsOf(page, 'best-practice')).map((fault) => `${name}: ${fault}`));
    };
    for (const state of demoStates) await look(state);
    await visitPage(page, '/records/');
    for (const state of ownStates) await look(state);
    expect(faults).toEqual([]);
  });

  it('where nothing could be opened', async () => {
    const { page, context } = await site.visit();
    await context.route('**/demo/**', (route) => route.abort());
    const faults: string[] = [];
    await page.goto(`${site.url}/`);
    await page.getByRole('button', { name: 'Try again' }).waitFor(opened);
    for (const address of sitePages) {
      await visitPage(page, address);
      expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(1);
      await picture(page, `nothing${address.replace(/\W+/g, '-')}`);
      faults.push(...(await accessFaultsOf(page, 'best-practice')).map((fault) => `${address}: ${fault}`));
    }
    expect(faults).toEqual([]);
  });
});

let shared: Page | null = null;

/** One page with the demo fleet for all tests: opening it takes longest. */
async function fleetPage(): Promise<Page> {
  if (shared !== null) return shared;
  const { page } = await site.visit();
  await openFleet(page, site.url);
  shared = page;
  return page;
}
