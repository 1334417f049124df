import { describe, expect, it } from 'vitest';
import { accessFaultsOf } from '../../support/accessFaultsOf';
import { opened, picture, sharedSite } from '../../support/sharedSite';

const site = sharedSite();

/** A paper and the one that it is compared with take seconds; a crowded machine takes longer. */
const computed = { timeout: 240_000 };

/** A4 less the margins of the print style sheet, at 96 pixels an inch. */
const pageHeight_px = ((297 - 14 - 16) / 25.4) * 96;
const pageWidth_px = Math.round(((210 - 14 - 14) / 25.4) * 96);

const headings = [
  'Report',
  'The answer',
  'Chance that the first limit is met, by date',
  'Units that cannot wait',
  'Signals of drift',
  'Spares to order',
  'Held data',
  'What changed',
  'Method',
  'Cautions',
];

/** Titles of the outline of a PDF, in order: its headings. */
function outlineOf(pdf: Buffer): readonly string[] {
  return [...pdf.toString('latin1').matchAll(/\/Title \(((?:[^()\\]|\\.)*)\)/g)].map(
    ([, title = '']) => title,
  );
}

describe('the planning paper', () => {
  it('says what Fleet and Spares say, names what changed since an earlier day, and prints whole', async () => {
    const { page, outside, errors } = await site.visit();
    await page.goto(`${site.url}/report/?since=2024-10-21`);
    const answer = page.getByRole('region', { name: 'The answer' });
    await answer.waitFor(computed);
    const sentences = await answer.getByRole('listitem').allTextContents();
    await page.getByText('Planning paper for the whole fleet, as of 2026-10-21: 52 units.').waitFor();
    const changed = page.getByRole('region', { name: 'What changed' });
    // The fast thrust bearing of the demo fleet shows in readings of the last two years only.
    await changed.getByRole('row', { name: /O-3005 .*cannot wait now/i }).waitFor();
    expect(sentences.at(-1)).toMatch(/^Since 2024-10-21 [1-9]\d* units? newly cannot wait/);
    expect(await accessFaultsOf(page)).toEqual([]);
    await picture(page, 'report');

    await expect.poll(() => page.locator('main [role=img]:empty').count(), opened).toBe(0);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: pageWidth_px, height: 768 });
    const shapes = await page.locator('main [role=img]:visible').evaluateAll((pictures) =>
      pictures.map((one) => ({
        height_px: one.getBoundingClientRect().height,
        bottom_px: one.getBoundingClientRect().bottom + window.scrollY,
        units: one.querySelectorAll('[data-pick]').length,
        breakInside: getComputedStyle(one).breakInside,
      })),
    );
    // The first picture fits what the answer leaves of the first page; together they hold every unit.
    expect(shapes[0]?.bottom_px).toBeLessThan(pageHeight_px);
    expect(shapes.reduce((sum, { units }) => sum + units, 0)).toBeGreaterThanOrEqual(52);
    for (const { height_px, breakInside } of shapes) {
      expect(height_px).toBeGreaterThan(100);
      expect(height_px).toBeLessThan(pageHeight_px);
      expect(breakInside).toBe('avoid');
    }
    const pdf = await page.pdf({ preferCSSPageSize: true, outline: true, tagged: true });
    // A heading is written after those under it.
    expect(outlineOf(pdf).filter((title) => headings.includes(title))).toEqual([
      ...headings.slice(1),
      'Report',
    ]);
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize({ width: 1366, height: 768 });

    // The same figures on the pages that the sentences name.
    const answerOf = async (name: string) => {
      await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name }).click();
      await page.getByRole('heading', { name, level: 1 }).waitFor(opened);
      const said = page.locator('p.answer').first();
      await said.waitFor(opened);
      return said.textContent();
    };
    const [units = '', ...others] = sentences;
    expect(units).toContain(await answerOf('Fleet'));
    const orders = await answerOf('Spares');
    expect(others.some((sentence) => sentence.startsWith(orders ?? 'no answer'))).toBe(true);
    expect(outside).toEqual([]);
    expect(errors).toEqual([]);
  });
});
