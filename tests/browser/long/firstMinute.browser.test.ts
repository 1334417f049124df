import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { accessFaultsOf } from '../../support/accessFaultsOf';
import { atRest, opened, picture, sharedSite } from '../../support/sharedSite';

const site = sharedSite();

const widthLeft_px = (page: Page) =>
  page.evaluate(() => window.innerWidth - document.documentElement.scrollWidth);

describe('the first minute', () => {
  it('finds a unit from any page by keyboard, on a telephone too', async () => {
    for (const size of [
      { width: 1366, height: 768 },
      { width: 390, height: 844 },
    ]) {
      const { page, errors } = await site.visit(size);
      await page.goto(`${site.url}/methods/`);
      const field = page.getByRole('combobox', { name: 'Find a unit' });
      await field.focus();
      await page.keyboard.type('o30');
      const list = page.getByRole('listbox', { name: 'Units found' });
      await list.waitFor(opened);
      await page.keyboard.press('ArrowDown');
      const taken = list.getByRole('option', { selected: true });
      const serial = (await taken.locator('b').textContent()) ?? '';
      expect(serial).toMatch(/^O-30/);
      expect(await accessFaultsOf(page)).toEqual([]);
      await picture(page, `search-${size.width}`);
      expect(await widthLeft_px(page)).toBeGreaterThanOrEqual(0);
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { level: 1, name: `Unit ${serial}` }).waitFor(opened);
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');
      expect(errors).toEqual([]);
    }
  });

  it('explains a term on focus and on a click, inside the window, until Escape or a click elsewhere', async () => {
    for (const size of [
      { width: 1366, height: 768 },
      { width: 390, height: 844 },
    ]) {
      const { page, errors } = await site.visit(size);
      await page.goto(`${site.url}/`);
      const term = page.locator('[aria-label="Units"] p [data-term=limit]');
      await term.waitFor(opened);
      await atRest(page);
      const note = page.locator('#note-limit');
      await term.focus();
      await note.waitFor({ state: 'visible' });
      const at = await note.boundingBox();
      const word = await term.boundingBox();
      if (at === null || word === null) throw new Error('the note and its word must be in sight');
      expect(at.x).toBeGreaterThanOrEqual(0);
      expect(at.x + at.width).toBeLessThanOrEqual(size.width);
      expect(
        Math.min(Math.abs(at.y - word.y - word.height), Math.abs(word.y - at.y - at.height)),
      ).toBeLessThan(20);
      expect(await accessFaultsOf(page)).toEqual([]);
      await picture(page, `term-${size.width}`);
      await page.keyboard.press('Escape');
      await note.waitFor({ state: 'hidden' });
      await term.click();
      await note.waitFor({ state: 'visible' });
      await page.getByRole('heading', { level: 1 }).click();
      await note.waitFor({ state: 'hidden' });
      // By keyboard, the way on leads through the note to Methods.
      await term.focus();
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { level: 1, name: 'Methods' }).waitFor(opened);
      expect(new URL(page.url()).hash).toBe('#word-limit');
      expect(errors).toEqual([]);
    }
  });

  it('follows one unit of the demo fleet from file to order, with the numbers of the other pages', async () => {
    const { page, errors } = await site.visit();
    await page.goto(`${site.url}/records/`);
    await page.getByRole('link', { name: 'From file to order' }).click();
    const order = page.getByRole('region', { name: 'The order' }).locator('p').first();
    await order.waitFor(opened);
    await atRest(page);
    const said = ((await order.textContent()) ?? '').replaceAll(/[\u00a0\u202f]/g, ' ');
    const [, quantity = '', part = '', day = ''] =
      /Order (\d+) of (\S+) by (\d{4}-\d\d-\d\d)/.exec(said) ?? [];
    const level = (await page.getByRole('region', { name: 'Level and margin today' }).textContent()) ?? '';
    const [, unit = '', value = ''] = / of (\S+) is ([\d.]+)/.exec(level) ?? [];
    const limit = Number(/limit is ([\d.]+)/.exec(level)?.[1]);
    const margin = Number(/margin is ([\d.]+)/.exec(level)?.[1]);
    expect(Math.abs(margin - Math.abs(limit - Number(value)))).toBeLessThan(0.011);
    expect(await accessFaultsOf(page)).toEqual([]);
    await picture(page, 'example');
    await page.getByRole('link', { name: 'All orders' }).click();
    const row = page.getByRole('row', { name: new RegExp(`^${part} `) }).first();
    await row.waitFor(opened);
    expect(await row.textContent()).toContain(day);
    expect(await row.textContent()).toContain(quantity);
    await page.getByRole('link', { name: 'Fleet' }).first().click();
    await page
      .getByRole('row', { name: new RegExp(`^${unit} .*${value.replace('.', '\\.')}`) })
      .first()
      .waitFor(opened);
    expect(errors).toEqual([]);
  });

  it('keeps which columns a reader looks at', async () => {
    const { page, errors } = await site.visit();
    await page.goto(`${site.url}/`);
    const heads = page.getByRole('table', { name: 'Units by what cannot wait' }).getByRole('columnheader');
    await heads.first().waitFor(opened);
    const all = await heads.count();
    await page.getByRole('button', { name: 'Columns of Units by what cannot wait' }).click();
    await page.getByRole('checkbox', { name: 'Site' }).uncheck();
    await expect.poll(() => heads.count()).toBe(all - 1);
    await picture(page, 'columns');
    expect(await accessFaultsOf(page)).toEqual([]);
    await page.reload();
    await heads.first().waitFor(opened);
    await expect.poll(() => heads.count()).toBe(all - 1);
    expect(errors).toEqual([]);
  });
});
