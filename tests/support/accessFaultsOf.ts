import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeScript = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What axe finds on a page against WCAG 2.2 A and AA.
 *
 * @param further tags of rules to be kept beside them, such as 'best-practice'
 */
export async function accessFaultsOf(page: Page, ...further: readonly string[]): Promise<readonly string[]> {
  await page.evaluate(axeScript);
  return page.evaluate(async (besides) => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', ...besides];
    // Only what is wrong is written out: naming every element that is right takes most of the time.
    const { violations } = await axe.run(document, {
      runOnly: { type: 'tag', values: tags },
      resultTypes: ['violations'],
    });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  }, further);
}
