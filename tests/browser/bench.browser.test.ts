import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { dropFiles } from '../support/openSite';
import { opened, picture, sharedSite } from '../support/sharedSite';

const site = sharedSite();
const files = ['kestrel-wide.csv', 'limits.csv'].map((name) => ({
  name,
  content: readFileSync(`data/examples/${name}`),
}));

/** Boxes of a stage in the order of the page, by their labels. */
function boxesOf(page: Page, stage: 'found' | 'left') {
  return page
    .getByRole('table', { name: `Readings as ${stage}` })
    .getByRole('textbox')
    .evaluateAll((boxes) => boxes.map((box) => box.getAttribute('aria-label') ?? ''));
}

async function savedText(page: Page, button: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  return readFileSync(await (await download).path(), 'utf8');
}

describe('an overhaul on a phone', () => {
  it('is typed as found and as left, asked about, kept over a reload, saved, and found in the history and in a file', async () => {
    const { page, outside, errors } = await site.visit({ width: 390, height: 844 });
    await page.goto(`${site.url}/records/`);
    await page.getByText('The demo fleet is open').waitFor(opened);
    await dropFiles(page, files);
    await page.getByText(/Your 2 files are open/).waitFor(opened);
    await page.getByRole('link', { name: 'Bench' }).click();
    await page.getByLabel('Unit', { exact: true }).fill('K-4007');
    await page.keyboard.press('Enter');
    const date = page.getByLabel('Date', { exact: true });
    await date.waitFor(opened);
    await date.fill('2028-02-01');
    const hours = page.getByLabel('Hours on the unit, h');
    await page.waitForFunction(() => document.querySelector('input[placeholder^="about"]') !== null);
    const expected = ((await hours.getAttribute('placeholder')) ?? '').replace(/\D/g, '');
    await hours.focus();
    await page.keyboard.type(expected);
    await page.keyboard.press('Enter');
    await page.keyboard.type('Merrow Works');

    const found = await boxesOf(page, 'found');
    expect(found).toHaveLength(10);
    const table = page.getByRole('table', { name: 'Readings as found' });
    const medians = await table
      .locator('tbody tr:has(input) td:nth-child(3)')
      .evaluateAll((cells) => cells.map((cell) => (cell.textContent ?? '').split(' / ')[1] ?? ''));
    const [first = ''] = medians;
    const tenfold = (Number(first) * 10).toFixed(2);
    await page.getByLabel(found[0] ?? '', { exact: true }).focus();
    for (const median of medians) {
      await page.keyboard.type((median === first ? tenfold : median).replace('.', ','));
      await page.keyboard.press('Enter');
    }
    // Ten times the play that is expected: asked about, with what would fit, and changed only when that is pressed.
    await table.getByText(/Is the unit of measure right\?/).waitFor(opened);
    const play = page.getByLabel(found[0] ?? '', { exact: true });
    expect(await play.inputValue()).toBe(tenfold.replace('.', ','));
    await picture(page, 'bench-asked-390');
    await page.getByRole('button', { name: /^Take 0/ }).click();
    expect(Number(await play.inputValue())).toBeCloseTo(Number(first), 3);
    await table.getByText(/Thrust play .* is within the upper limit of 0\.360/).waitFor(opened);

    await page.reload();
    await play.waitFor(opened);
    expect(Number(await play.inputValue())).toBeCloseTo(Number(first), 3);
    const left = await boxesOf(page, 'left');
    const lefts = await page
      .getByRole('table', { name: 'Readings as left' })
      .locator('tbody tr:has(input) td:nth-child(2)')
      .allTextContents();
    await page.getByLabel(left[0] ?? '', { exact: true }).focus();
    for (const value of [first, ...lefts.slice(1)]) {
      await page.keyboard.type(value);
      await page.keyboard.press('Enter');
    }
    await page.getByRole('heading', { name: 'What the overhaul did' }).waitFor(opened);
    await page.getByText('20 readings typed.').waitFor(opened);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await picture(page, 'bench-typed-390');

    const readings = (await savedText(page, 'Save readings CSV')).trim().split('\n');
    expect(readings[0]).toBe(
      'overhaul,characteristic,stage,clock,value,uom,lower,upper,source_file,source_row',
    );
    expect(readings).toHaveLength(21);
    expect(readings[1]).toMatch(/^K-4007 2028-02-01,thrust_play,found,,0\.\d+,mm,,,,$/);
    const overhaul = (await savedText(page, 'Save overhauls CSV')).trim().split('\n')[1];
    expect(overhaul).toContain(`K-4007 2028-02-01,K-4007,2028-02-01,${expected},`);
    expect(overhaul).toContain(',Merrow Works,planned,');

    await page.getByRole('button', { name: 'Save in my files' }).click();
    await page.getByText(/Saved: the overhaul is among your files/).waitFor(opened);
    await page.getByRole('link', { name: 'history of K-4007', exact: true }).click();
    await page
      .getByRole('row', { name: /2028-02-01.*Merrow Works/ })
      .first()
      .waitFor(opened);
    await page.getByRole('link', { name: 'Records', exact: true }).first().click();
    await page.getByText(/Your 4 files are open/).waitFor(opened);
    expect(await page.getByRole('heading', { name: /^Questions/ }).count()).toBe(0);
    expect(outside).toEqual([]);
    expect(errors).toEqual([]);
  });
});
