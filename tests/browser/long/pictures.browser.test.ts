import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { opened, picture, sharedSite } from '../../support/sharedSite';
import { openFleet, sitePages, visitPage } from '../../support/sitePages';

const site = sharedSite();

/** What is seen of a row of a table that is marked: its first cell has a bar. */
const isMarked = (page: Page, unit: string) =>
  page
    .locator(`tr[data-unit="${unit}"]`)
    .first()
    .evaluate((row) => getComputedStyle(row.children[0] ?? row).boxShadow !== 'none');

/** A number of a text, its thousands parted by any space. */
function numberIn(text: string, pattern: RegExp): number {
  const found = pattern.exec(text)?.[1];
  if (found === undefined) throw new Error(`‘${text}’ has nothing like ${pattern}`);
  return Number(found.replaceAll(/\s/g, ''));
}

describe('pictures', () => {
  let page: Page;
  beforeAll(async () => {
    ({ page } = await site.visit());
    await openFleet(page, site.url);
  }, 120_000);

  it.each(sitePages)(
    'of %s say what they find, have a table, and are gone through point by point',
    async (address) => {
      await visitPage(page, address);
      const pictures = await page.locator('main [role=img][aria-label]').evaluateAll((images) =>
        images
          .filter((image) => image.checkVisibility())
          .map((image) => {
            const slider = image.parentElement?.querySelector('[role=slider]');
            const label = slider?.getAttribute('aria-label')?.replace('Points of the picture: ', '') ?? '';
            const name = image.getAttribute('aria-label') ?? '';
            return {
              label,
              // A name starts with what the picture is, and goes on with what it finds.
              finding: name.startsWith(`${label}. `) ? name.slice(label.length + 2) : '',
              points: Number(slider?.getAttribute('aria-valuemax') ?? 0),
              hasTable: image.closest('section, main')?.querySelector('table') != null,
            };
          }),
      );
      for (const { label, finding, points, hasTable } of pictures) {
        expect(finding, label).toMatch(/\d|None|All|no /i);
        expect(finding, label).not.toBe(label);
        expect(points, label).toBeGreaterThan(0);
        expect(hasTable, label).toBe(true);
      }
      const first = page.getByRole('slider').first();
      if (pictures.length === 0) return;
      await first.focus();
      const heard = [await first.getAttribute('aria-valuetext')];
      for (let time = 1; time < Math.min(3, pictures[0]?.points ?? 0); time++) {
        await page.keyboard.press('ArrowRight');
        heard.push(await first.getAttribute('aria-valuetext'));
      }
      expect(new Set(heard).size).toBe(heard.length);
      for (const text of heard) expect(text).not.toMatch(/^$|axis|undefined|null|NaN/);
      await picture(page, `points${address.replace(/\W+/g, '-')}`);
      await page.keyboard.press('Escape');
    },
  );

  it('and tables mark the same unit, whichever is pointed at or has the focus', async () => {
    await visitPage(page, '/');
    const slider = page.getByRole('slider').first();
    await slider.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowDown');
    const units = await page
      .locator('[aria-label="Units"] tbody tr')
      .evaluateAll((rows) => rows.map((row) => row.getAttribute('data-unit') ?? ''));
    const [first = '', second = ''] = units;
    expect(await slider.getAttribute('aria-valuetext')).toContain(`${second}:`);
    expect(await isMarked(page, second)).toBe(true);
    expect(await isMarked(page, first)).toBe(false);
    // The same from the table.
    const strip = page.locator(`.mark-rect [data-pick="${first}"] path`).first();
    expect(await strip.evaluate((path) => getComputedStyle(path).opacity)).toBe('0');
    await page.locator(`tr[data-unit="${first}"] td`).first().hover();
    expect(await strip.evaluate((path) => getComputedStyle(path).opacity)).toBe('1');
    expect(await isMarked(page, second)).toBe(false);
    await page.locator('h1').hover();
    expect(await isMarked(page, first)).toBe(false);
    await slider.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: `Unit ${first}` }).waitFor(opened);
  });

  it('of a unit read hours and mm under the pointer: at a mark, those of its reading', async () => {
    await visitPage(page, '/unit/?id=O-3005');
    const marks = page.locator('figure [role=img]:visible .mark-symbol [aria-label^="as found"]');
    const line = page.getByText('Values under the pointer stand here.');
    await line.waitFor();
    await marks.first().scrollIntoViewIfNeeded();
    const count = await marks.count();
    expect(count).toBeGreaterThan(2);
    for (let place = 0; place < count; place++) {
      const says = (await marks.nth(place).getAttribute('aria-label')) ?? '';
      const box = await marks.nth(place).boundingBox();
      if (box === null) throw new Error(`‘${says}’ is not in sight`);
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      const words = (await page.locator('figure p[aria-hidden=true]').textContent()) ?? '';
      // A pixel is some 70 h and 0.001 mm.
      expect(Math.abs(numberIn(words, /^([\d\s]+)h on/) - numberIn(says, /, ([\d\s]+)h on/))).toBeLessThan(
        150,
      );
      expect(Math.abs(numberIn(words, /unit, ([\d.]+)/) - numberIn(says, /: ([\d.]+)/))).toBeLessThan(0.004);
    }
    await picture(page, 'crosshair-1366');
    await page.mouse.move(5, 5);
    await line.waitFor();
  });
});
