import { readFileSync } from 'node:fs';
import { csvParse } from 'd3-dsv';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { opened, picture, sharedSite } from '../support/sharedSite';

const site = sharedSite();
const pngSignature = '89504e470d0a1a0a';
const chart = 'Chance that the first limit is met, by date';

async function saved(page: Page, name: string) {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name, exact: true }).click();
  const file = await download;
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

describe('tables and pictures leave the page, and numbers are written as the reader likes', () => {
  it('saves CSV, SVG and PNG, copies for a spreadsheet, and keeps the choice of how numbers are written', async () => {
    const { page, context, outside, errors } = await site.visit();
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.goto(`${site.url}/`);
    const answer = page.locator('.answer').first();
    await answer.waitFor(opened);
    const table = page.getByRole('table', { name: 'Units by what cannot wait' });
    const shown = table.getByRole('row', { name: /^O-3005/ });
    await expect.poll(() => shown.textContent(), opened).toContain('2027-10-01');
    await table.getByRole('button', { name: 'Hours now' }).click();
    await table.locator('th[aria-sort=ascending]').waitFor(opened);

    const csv = await saved(page, 'Save CSV Units by what cannot wait');
    expect(csv.name).toBe('units-by-what-cannot-wait.csv');
    const rows = csvParse(csv.bytes.toString('utf8'));
    expect(rows).toHaveLength(Number(await table.getAttribute('aria-rowcount')) - 1);
    const hours = rows.map((row) => Number(row['Hours now, h']));
    expect(hours).toEqual(hours.toSorted((a, b) => a - b));
    const row = rows.find(({ Unit }) => Unit === 'O-3005');
    const cells = await shown.locator('th, td').allTextContents();
    const level = Number(row?.['Level, mm']);
    expect(cells).toContain(
      `${level.toFixed(3)}\u00a0±\u00a0${Number(row?.['SD of the level, mm']).toFixed(3)}\u00a0mm`,
    );
    expect(cells).toContain(row?.['Next overhaul']);

    await page.getByRole('button', { name: 'Copy Units by what cannot wait' }).click();
    await page.getByText(`${rows.length} rows copied.`).waitFor();
    const copied = await page.evaluate(async () => {
      const [item] = await navigator.clipboard.read();
      const html = await (await item?.getType('text/html'))?.text();
      return { text: await navigator.clipboard.readText(), html: html ?? '' };
    });
    const lines = copied.text
      .replaceAll('\r', '')
      .split('\n')
      .filter((line) => line !== '');
    expect(lines).toHaveLength(rows.length + 1);
    expect(lines[0]?.split('\t')).toEqual(rows.columns);
    expect(lines.slice(1).map((line) => Number(line.split('\t')[3]))).toEqual(hours);
    expect(copied.html.match(/<tr/g)).toHaveLength(rows.length + 1);

    await page.getByRole('img', { name: chart }).locator('svg').first().waitFor(opened);
    const svg = await saved(page, `Save SVG ${chart}`);
    const said = await page.evaluate((text) => {
      const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
      const root = parsed.documentElement;
      return {
        failed: parsed.querySelector('parsererror') !== null,
        title: parsed.querySelector('svg > title')?.textContent,
        description: parsed.querySelector('svg > desc')?.textContent,
        size: [Number(root.getAttribute('width')), Number(root.getAttribute('height'))],
        outward: parsed.querySelectorAll('a, script, image, style, [href]').length,
      };
    }, svg.bytes.toString('utf8'));
    expect(said).toMatchObject({ failed: false, title: chart, outward: 0 });
    expect(said.description).toContain('5 of 52 units');
    expect(svg.bytes.toString('utf8')).not.toMatch(/NaN|Infinity|undefined|null/);
    const png = await saved(page, `Save PNG ${chart}`);
    expect(png.bytes.subarray(0, 8).toString('hex')).toBe(pngSignature);
    expect([png.bytes.readUInt32BE(16), png.bytes.readUInt32BE(20)]).toEqual(
      said.size.map((side) => 2 * side),
    );

    await page.getByRole('combobox', { name: 'Numbers' }).selectOption({ label: '12.345,6' });
    await page.getByRole('combobox', { name: 'Dates' }).selectOption({ label: '31.12.2026' });
    const inChoice = async () => {
      expect(await answer.textContent()).toContain('01.10.2027');
      const now = (await shown.textContent()) ?? '';
      expect(now).toContain(level.toFixed(3).replace('.', ','));
      expect(now).toContain('01.10.2027');
      await page.locator('svg text', { hasText: 'today, 21.10.2026' }).first().waitFor(opened);
    };
    await inChoice();
    expect((await saved(page, 'Save CSV Units by what cannot wait')).bytes.toString('utf8')).toBe(
      csv.bytes.toString('utf8'),
    );
    await page.reload();
    await expect.poll(() => answer.textContent(), opened).toContain('01.10.2027');
    await inChoice();
    await picture(page, 'export');
    expect(outside).toEqual([]);
    expect(errors).toEqual([]);
  });
});
