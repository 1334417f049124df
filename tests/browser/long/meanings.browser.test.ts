import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { dropFiles } from '../../support/openSite';
import { opened, picture, sharedSite } from '../../support/sharedSite';

const site = sharedSite();

const header = ['Kennung', 'Wann', 'Zähler', 'M1', 'M2', 'Notiz'];
const rows = [
  ['R-1', '03.02.2016', '8120', '0,31', '0,12', ''],
  ['R-1', '21.05.2018', '16900', '0,35', '0,14', 'Lager neu'],
  ['R-2', '14.07.2017', '7900', '0,28', '0,11', ''],
  ['R-2', '31.09.2019', '16200', '0,33', '0,12', 'Tag nachfragen'],
  ['R-2', '11.11.2021', '25100', '0,36', '0,13', ''],
];
/** No header says what was measured: only a person can know. */
const mute = { name: 'mute.csv', content: [header, ...rows].map((row) => row.join(';')).join('\r\n') };
const sister = {
  name: 'sister.csv',
  content: [
    header,
    ['R-3', '02.04.2019', '9100', '0,33', '0,13', ''],
    ['R-3', '16.06.2021', '17000', '0,36', '0,15', ''],
  ]
    .map((row) => row.map((cell) => `"${cell}"`).join('\t'))
    .join('\n'),
};

const used = async (page: Page) =>
  Number(/readings, (\d+) used/.exec((await page.locator('.answer').first().textContent()) ?? '')?.[1]);

async function visitRecords(page: Page): Promise<void> {
  await page.goto(`${site.url}/records/`);
  await page
    .getByRole('row', { name: /readings\.csv/ })
    .first()
    .waitFor(opened);
}

describe('what the columns of a sheet hold', () => {
  it('is said on one screen with a preview, by keyboard, applied to all of the shape, and remembered', async () => {
    const { page, outside, errors } = await site.visit();
    await visitRecords(page);
    await dropFiles(page, [mute, sister]);
    const correct = page.getByRole('button', { name: 'Correct the columns of mute.csv' });
    await correct.waitFor(opened);
    const before = await used(page);

    // Escape leaves everything as it was.
    await correct.focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'What the columns of mute.csv hold' });
    await dialog
      .getByRole('row', { name: /03\.02\.2016/ })
      .last()
      .waitFor(opened);
    await dialog.getByLabel('M1: read as').selectOption('reading');
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expect(await correct.evaluate((button) => button === document.activeElement)).toBe(true);
    expect(await used(page)).toBe(before);

    await page.keyboard.press('Enter');
    const apply = dialog.getByRole('button', { name: 'Apply to this and 1 other file of the same shape' });
    await dialog.getByLabel('M1: read as').focus();
    expect(await apply.isDisabled()).toBe(true);
    await page.keyboard.type('reading');
    await dialog.getByText('‘M1’: say which characteristic the reading is of.').waitFor(opened);
    expect(await apply.isDisabled()).toBe(true);
    await page.keyboard.press('Tab');
    await page.keyboard.type('Thrust');
    await page.keyboard.press('Tab');
    await page.keyboard.type('as found');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowDown');
    await dialog.getByLabel('M2: read as').selectOption('reading');
    await dialog.getByLabel('M2: characteristic').selectOption('thrust_play');
    await dialog.getByLabel('M2: as found or as left').selectOption('left');
    await dialog.getByLabel('M2: unit of measure').selectOption('mm');
    await dialog
      .getByText('In the whole file: 10 cells for readings, 7 readings used, 3 held.')
      .waitFor(opened);
    // Unit, day and hours are told by their values once something is known to be measured.
    expect(await dialog.getByLabel('Kennung: read as').inputValue()).toBe('unit');
    const line = dialog.getByRole('row', { name: /R-1, 2018-05-21, 16.900.h/ });
    expect(await line.textContent()).toContain('thrust play, as found: 0.350\u00a0mm');
    expect(await dialog.getByRole('row', { name: /31\.09\.2019.*held/ }).textContent()).toContain('Wann');
    await picture(page, 'meanings-1366');
    await apply.click();
    await page.getByRole('heading', { name: 'Decisions in force' }).waitFor(opened);
    await expect.poll(() => used(page), opened).toBe(11);

    await page.reload();
    await expect.poll(() => used(page), opened).toBe(11);
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save answers and column meanings' }).click();
    const saved = readFileSync(await (await saving).path());
    await page.getByRole('button', { name: /^Take back 5 column meanings/ }).click();
    await expect.poll(() => page.getByRole('button', { name: /^Take back/ }).count(), opened).toBe(0);
    expect(await page.getByText('mute.csv: not understood').count()).toBe(1);
    expect(errors).toEqual([]);

    // Another visitor opens the saved file before any sheet, and is asked nothing.
    const other = await site.visit({ width: 390, height: 844 });
    await visitRecords(other.page);
    const picker = other.page.getByLabel('Saved answers');
    await picker.setInputFiles({
      name: 'broken.json',
      mimeType: 'application/json',
      buffer: saved.subarray(0, 300),
    });
    await other.page.getByText('broken.json was not taken.').waitFor();
    await picker.setInputFiles({ name: 'saved.json', mimeType: 'application/json', buffer: saved });
    await other.page.getByText('5 answers and meanings taken from saved.json.').waitFor(opened);
    await dropFiles(other.page, [sister]);
    await expect.poll(() => used(other.page), opened).toBe(4);
    await other.page.getByText(/^sister\.csv: 6 of 6 columns used/).click();
    await other.page.getByRole('button', { name: 'Correct the columns of sister.csv' }).click();
    await other.page.getByText(/In the whole file: 4 cells/).waitFor(opened);
    await picture(other.page, 'meanings-390');
    await other.page.getByText(/In the whole file: 4 cells/).scrollIntoViewIfNeeded();
    await picture(other.page, 'preview-390');
    expect(await other.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    expect([...outside, ...other.outside]).toEqual([]);
    expect(other.errors).toEqual([]);
  });
});
