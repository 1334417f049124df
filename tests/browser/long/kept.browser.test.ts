import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { dropFiles } from '../../support/openSite';
import { atRest, opened, picture, sharedSite } from '../../support/sharedSite';

const site = sharedSite();

/** A sheet of a unit of its own. */
const sheet = (unit: string) => ({
  name: `${unit}.csv`,
  content: `unit,date,unit_hours,runout_found_mm\n${unit},2016-02-03,8000,0.031\n${unit},2018-02-03,16000,0.034\n`,
});

const kept = (page: Page, words: string) =>
  page.locator('header').getByText(words, { exact: true }).waitFor(opened);
const notice = (page: Page, words: string | RegExp) =>
  page.getByRole('region', { name: 'What is kept in this browser' }).getByText(words);
const choose = (page: Page) => page.getByRole('button', { name: 'Choose files' });

async function filesOpen(page: Page, count: number): Promise<void> {
  await page.getByText(count === 1 ? /Your 1 file is open/ : `Your ${count} files are open`).waitFor(opened);
  await atRest(page);
}

async function dropped(page: Page, count: number, ...files: ReturnType<typeof sheet>[]): Promise<void> {
  await dropFiles(page, files);
  await filesOpen(page, count);
}

/**
 * Makes a full storage possible: no quota that can be set from outside reaches what the worker keeps. The answer is a function
 * that says whether storage is full from now on; a write then fails as the standard of IndexedDB says.
 */
async function withFullStorage(
  context: BrowserContext,
): Promise<(page: Page, isFull: boolean) => Promise<void>> {
  const inWorker = () => {
    const place = globalThis as { isStorageFull?: boolean };
    if (typeof document !== 'undefined' || place.isStorageFull !== undefined) return;
    place.isStorageFull = false;
    new BroadcastChannel('full storage').onmessage = ({ data }) => {
      place.isStorageFull = data;
    };
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...words) {
      if (place.isStorageFull) throw new DOMException('no room is left', 'QuotaExceededError');
      return put.apply(this, words);
    };
  };
  await context.route('**/_next/static/**/*.js*', async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: `(${inWorker})();\n${await response.text()}` });
  });
  return (page, isFull) =>
    page.evaluate((full) => new BroadcastChannel('full storage').postMessage(full), isFull);
}

/** Does something to the store of the site from a page of it that uses nothing of it. */
async function inStore(page: Page, act: 'remove it' | 'damage the journal'): Promise<void> {
  await page.goto(`${site.url}/icon.svg`);
  await page.evaluate(
    (what) =>
      new Promise<void>((resolve, reject) => {
        if (what === 'remove it') {
          const removing = indexedDB.deleteDatabase('endfloat');
          removing.onsuccess = () => resolve();
          removing.onerror = () => reject(removing.error);
          return;
        }
        const opening = indexedDB.open('endfloat');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const writing = opening.result.transaction('own-files', 'readwrite');
          writing.objectStore('own-files').put([{ number: 1, what: 'of another version' }], 'journal');
          writing.oncomplete = () => {
            opening.result.close();
            resolve();
          };
          writing.onerror = () => reject(writing.error);
        };
      }),
    act,
  );
}

describe('what is kept in this browser', () => {
  it('is said where storage is full, looked at from a second tab, handed over, and missed when it is gone', async () => {
    const { page, context, errors } = await site.visit();
    const fillStorage = await withFullStorage(context);
    await page.goto(`${site.url}/records/`);
    await page
      .getByRole('row', { name: /readings\.csv/ })
      .first()
      .waitFor(opened);
    await dropped(page, 1, sheet('W-1'));
    await kept(page, 'saved in this browser');

    // The storage is full: everything goes on, and it is said what is not kept.
    await fillStorage(page, true);
    await dropped(page, 2, sheet('W-2'));
    await kept(page, 'not saved');
    await notice(page, /storage .* is full .* Save the workspace file/).waitFor(opened);
    await picture(page, 'storage-full');
    await fillStorage(page, false);
    await dropped(page, 3, sheet('W-3'));
    await kept(page, 'saved in this browser');
    await page.reload();
    await filesOpen(page, 3);

    // A second tab looks on, follows, and takes over.
    const other = await context.newPage();
    await other.goto(`${site.url}/records/`);
    await filesOpen(other, 3);
    await notice(other, /has this page open and writes/).waitFor(opened);
    await kept(other, 'another tab writes');
    expect(await choose(other).isDisabled()).toBe(true);
    expect(await choose(page).isEnabled()).toBe(true);
    await other.getByRole('button', { name: 'Open the demo fleet' }).click();
    await other.getByText('Demo fleet: synthetic').waitFor(opened);
    await dropped(page, 4, sheet('W-4'));
    await notice(other, /has kept newer files or decisions/).waitFor(opened);
    await picture(other, 'looks-on');
    await other.getByRole('button', { name: 'Open what is kept' }).click();
    await filesOpen(other, 4);
    await other.getByRole('button', { name: 'Take over writing' }).click();
    await notice(page, /has taken over writing/).waitFor(opened);
    expect(await choose(page).isDisabled()).toBe(true);
    await expect.poll(() => choose(other).isEnabled(), opened).toBe(true);
    await dropped(other, 5, sheet('W-5'));
    await kept(other, 'saved in this browser');

    // The tab that writes is closed: the other one takes in what it kept and writes.
    await other.close();
    await notice(page, /has kept newer files or decisions/).waitFor(opened);
    await page.getByRole('button', { name: 'Open what is kept' }).click();
    await filesOpen(page, 5);
    await expect.poll(() => choose(page).isEnabled(), opened).toBe(true);

    // A value that cannot be read is said, and what can be read is open.
    await inStore(page, 'damage the journal');
    await page.goto(`${site.url}/records/`);
    await filesOpen(page, 5);
    await notice(page, /1 part of the journal of decisions .* set aside/).waitFor(opened);

    await inStore(page, 'remove it');
    await page.goto(`${site.url}/`);
    await notice(page, /it has cleared them/).waitFor(opened);
    await page.getByRole('button', { name: 'Leave this notice' }).click();
    await notice(page, /it has cleared them/).waitFor({ state: 'hidden' });
    expect(errors).toEqual([]);
  }, 600_000);
});
