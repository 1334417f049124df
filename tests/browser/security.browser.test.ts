import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Visit } from '../support/openSite';
import { elsewhere, type NotingHost } from '../support/plainHosts';
import { opened, sharedSite } from '../support/sharedSite';
import { elementsOut, waysOut } from '../support/waysOut';

const site = sharedSite();
let outside: NotingHost;
beforeAll(async () => {
  outside = await elsewhere();
});
afterAll(() => outside.close());

/** Everything that a page or its workers said was against the policy. */
async function violationsOf({ page }: Visit): Promise<readonly string[]> {
  const said: string[] = [];
  page.on('console', (message) => {
    if (/content security policy|against the policy/i.test(message.text())) said.push(message.text());
  });
  await page.addInitScript(() =>
    document.addEventListener('securitypolicyviolation', (event) =>
      console.error(`against the policy: ${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}`),
    ),
  );
  return said;
}

const pageOutcomes = ['fetch', 'post', 'request', 'socket', 'events', 'evaluated', 'made'];
const refused = (names: readonly string[]) => Object.fromEntries(names.map((name) => [name, 'refused']));

describe('the policy', () => {
  it('is kept by every page as it opens, and lets nothing out of pages and workers, nor a text be run', async () => {
    const visit = await site.visit();
    const { page, errors } = visit;
    const violations = await violationsOf(visit);
    await page.goto(`${site.url}/`);
    await page.locator('figure [role=img] svg').first().waitFor(opened);
    const addresses = await page
      .locator('nav[aria-label=Pages] a')
      .evaluateAll((links) => links.map((link) => (link as HTMLAnchorElement).href));
    expect(addresses.length).toBeGreaterThanOrEqual(7);
    // The engine, its database, and the one that draws.
    await expect.poll(() => page.workers().length, opened).toBe(3);
    for (const worker of page.workers())
      expect(await worker.evaluate(waysOut, outside.url), worker.url()).toEqual(
        refused([...pageOutcomes, 'script']),
      );
    // The attempts above are against the policy, on purpose.
    const before = violations.length;
    for (const address of [...addresses.slice(1), `${site.url}/nowhere/`]) {
      // The worker is started by the page's scripts once the page is there.
      const started = page.waitForEvent('worker', opened);
      await page.goto(address);
      await started;
    }
    expect(violations.slice(before)).toEqual([]);
    expect(await page.evaluate(waysOut, outside.url)).toEqual(refused(pageOutcomes));
    await page.evaluate(elementsOut, outside.url);
    expect(await page.evaluate(() => 'ranFromAnElement' in window)).toBe(false);
    expect(violations.length).toBeGreaterThan(before + 10);
    expect(outside.reached).toEqual([]);
    expect(errors).toEqual([]);
    // The other site does answer: that nothing reached it is the policy's doing.
    expect(await (await fetch(outside.url)).text()).toBe('taken');
    outside.reached.length = 0;
  });
});
