import { readFileSync } from 'node:fs';
import { csvParse } from 'd3-dsv';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { dropFiles } from '../support/openSite';
import { opened, picture, sharedSite } from '../support/sharedSite';
import { spreadsheetSave } from '../support/spreadsheetSave';

const site = sharedSite();

const files = [
  {
    name: 'overhauls.csv',
    content: `overhaul,unit,date,unit_hours
A,W-1,2014-01-01,0
B,W-1,2015-06-01,9000
C,W-1,2017-01-01,1800
D,W-2,2014-01-01,0
E,W-2,2016-06-01,12000
F,W-2,2018-06-01,24000
`,
  },
  {
    name: 'readings.csv',
    content: `overhaul,characteristic,stage,value,uom
A,thrust_play,left,O.20,mm
B,thrust_play,found,0.26,mm
B,thrust_play,left,=0.2,mm
C,thrust_play,found,0.27,mm
D,thrust_play,left,0.2l,mm
E,thrust_play,found,0.28,mm
E,thrust_play,left,0.19,mm
F,thrust_play,found,0.27,mm
`,
  },
];

async function dropOwn(page: Page): Promise<void> {
  await page.goto(`${site.url}/records/`);
  await page
    .getByRole('row', { name: /readings\.csv/ })
    .first()
    .waitFor(opened);
  await dropFiles(page, files);
  await page.getByText(/Your 2 files are open/).waitFor(opened);
}

const used = async (page: Page) =>
  Number(/readings, (\d+) used/.exec((await page.locator('.answer').first().textContent()) ?? '')?.[1]);

describe('held rows', () => {
  it('are edited, released and left out, kept over a reload, and taken back', async () => {
    const { page, errors } = await site.visit();
    await dropOwn(page);
    expect(await used(page)).toBe(4);
    await page.getByLabel('Your initials').fill('AB');
    await page.getByRole('button', { name: 'Rule on line 2 of readings.csv, column ‘value’' }).click();
    const form = page.getByRole('form', { name: 'Ruling' });
    await form.getByText('A,thrust_play,left,O.20,mm').waitFor(opened);
    expect(await form.getByRole('button', { name: 'Use as it stands' }).isDisabled()).toBe(true);
    await form.getByLabel('Text to be read in its place').fill('0.20');
    await picture(page, 'row-1366');
    await form.getByRole('button', { name: 'Use this text' }).click();
    await form.getByText('Give the reason').waitFor();
    await form.getByLabel('Reason').fill('an O for a 0');
    await page.keyboard.press('Enter');
    await page.getByText('to be read as ‘0.20’').waitFor();

    await page.getByRole('button', { name: 'Rule on line 4 of overhauls.csv, column ‘unit_hours’' }).click();
    await form.getByLabel('Reason').fill('new rotor in the same casing');
    await form.getByRole('button', { name: 'Use as it stands' }).click();

    await page.getByLabel('Select line 4 of readings.csv, column ‘value’').check();
    await page.getByLabel('Select line 6 of readings.csv, column ‘value’').check();
    const many = page.getByRole('form', { name: 'Ruling on 2 selected rows' });
    await many.getByLabel('Reason').fill('cannot be made out');
    await picture(page, 'selected-1366');
    await many.getByRole('button', { name: 'Leave out' }).click();
    await page.getByRole('button', { name: 'Apply 4 rulings' }).click();
    await page.getByRole('heading', { name: 'Journal' }).waitFor(opened);
    await expect.poll(() => used(page), opened).toBe(6);
    await page.getByText('read as ‘0.20’ in place of ‘O.20’: an O for a 0 (AB)').first().waitFor(opened);

    await page.reload();
    await page.getByRole('heading', { name: 'Journal' }).waitFor(opened);
    await expect.poll(() => used(page), opened).toBe(6);
    expect(await page.getByLabel('Your initials').inputValue()).toBe('AB');
    await picture(page, 'ruled-1366');
    await page
      .getByRole('button', { name: 'Take back the ruling on line 2 of readings.csv, column ‘value’' })
      .click();
    await expect.poll(() => used(page), opened).toBe(5);
    await page.getByRole('cell', { name: 'taken back' }).waitFor(opened);
    expect(errors).toEqual([]);
  });

  it('are saved, corrected in a spreadsheet, dropped back and reported by line', async () => {
    const { page, errors } = await site.visit({ width: 390, height: 844 });
    await dropOwn(page);
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save all held rows as CSV' }).click();
    const csv = readFileSync(await (await saving).path(), 'utf8');
    const rows = csvParse(csv.replace(/^\uFEFF/, ''));
    const lineOf = (raw: string) => rows.findIndex((row) => row.raw === raw) + 2;
    const content = spreadsheetSave(
      csv,
      {
        [lineOf('O.20')]: { corrected: '0,2', why: 'an O for a 0' },
        [lineOf("'=0.2")]: { corrected: '0,2' },
        [lineOf('0.2l')]: { ruling: 'release' },
      },
      { delimiter: ';', decimalComma: true, encoding: 'latin1' },
    );
    await dropFiles(page, [{ name: 'held-rows.csv', content }]);
    await page.getByText(/held-rows\.csv: 2 of 3 rulings applied/).waitFor(opened);
    await page.getByText(`Line ${lineOf('0.2l')}: what holds it is no doubt`).waitFor(opened);
    await expect.poll(() => used(page), opened).toBe(6);
    await page.getByRole('button', { name: 'Rule on line 6 of readings.csv, column ‘value’' }).click();
    await page.getByRole('form', { name: 'Ruling' }).scrollIntoViewIfNeeded();
    await picture(page, 'row-390');
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(390);
    await page.getByRole('heading', { name: 'Journal' }).scrollIntoViewIfNeeded();
    await picture(page, 'journal-390');
    expect(errors).toEqual([]);
  });
});
