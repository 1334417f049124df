import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { headsNotStaying, layoutFaultsOf } from '../../support/layoutFaults';
import { dropFiles } from '../../support/openSite';
import { opened, picture, sharedSite } from '../../support/sharedSite';
import { openFleet, settled, sitePages, visitPage } from '../../support/sitePages';

const site = sharedSite();

/** Widths of telephones, a tablet, a 13-inch laptop and a desk, CSS px. */
const widths_px = [320, 390, 768, 1366, 1920];
const height_px = 800;

describe('the layout at every width', () => {
  let page: Page;
  beforeAll(async () => {
    ({ page } = await site.visit({ width: 1366, height: height_px }));
    await openFleet(page, site.url);
  }, 120_000);

  it.each(sitePages)(
    'of %s: no sideways scrolling, nothing cut, nothing covered, targets large enough',
    async (address) => {
      await visitPage(page, address);
      const faults: string[] = [];
      for (const width of widths_px) {
        await page.setViewportSize({ width, height: height_px });
        await settled(page);
        await picture(page, `layout${address.replace(/\W+/g, '-')}-${width}`);
        for (const fault of [...(await layoutFaultsOf(page)), ...(await headsNotStaying(page))])
          faults.push(`${width} px: ${fault}`);
      }
      expect(faults).toEqual([]);
    },
  );

  it('keeps the title block on one line on a laptop, of the demo fleet and of own files that are kept', async () => {
    await page.setViewportSize({ width: 1366, height: height_px });
    expect(await titleBlockLines(page)).toBe(1);
    await visitPage(page, '/records/');
    await dropFiles(page, [
      { name: 'kestrel-wide.csv', content: readFileSync('data/examples/kestrel-wide.csv') },
    ]);
    await page.getByText(/Your 1 file is open/).waitFor(opened);
    await page.getByText('saved in this browser').waitFor(opened);
    expect(await titleBlockLines(page)).toBe(1);
  });

  it.each([
    ['a page that scrolls sideways', '<p style="width: 2000px">wide</p>', /scrolls sideways.*wide/],
    [
      'words that are cut',
      '<button style="width: 40px; overflow: hidden; white-space: nowrap">a long name</button>',
      /^cut: <button> 'a long name'/,
    ],
    [
      'controls over one another',
      '<button>one</button><button style="margin-left: -30px">two</button>',
      /^one over the other: <button> 'one' and <button> 'two'/,
    ],
    [
      'targets that are too small and too near',
      '<div><a href="#a" style="font-size: 10px">a</a><a href="#b" style="font-size: 10px">b</a></div>',
      /^too small, .*<a> 'a' beside <a> 'b'/,
    ],
  ])('finds %s', async (_, markup, fault) => {
    const other = (await site.visit({ width: 800, height: 600 })).page;
    await other.setContent(`<main>${markup}<p>Words with <a href="#c">a link</a> in them.</p></main>`);
    const faults = await layoutFaultsOf(other);
    expect(faults.filter((one) => fault.test(one))).not.toEqual([]);
    // A link in its sentence may be as small as its words.
    expect(faults.filter((one) => one.includes('a link'))).toEqual([]);
  });
});

/** Lines that the cells and links of the title block stand on. */
function titleBlockLines(page: Page): Promise<number> {
  return page
    .locator('header')
    .first()
    .evaluate((header) => {
      const places = [...header.querySelectorAll('p a, nav a')].map((link) => {
        const { top, bottom } = link.getBoundingClientRect();
        return (top + bottom) / 2;
      });
      const cells = [...header.children].map((cell) => cell.getBoundingClientRect().top);
      const spread = (at: readonly number[]) => Math.max(...at) - Math.min(...at);
      return spread(places) < 12 && spread(cells) < 12 ? 1 : 2;
    });
}
