import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hostileFleet } from '../support/hostileFleet';
import { flag } from '../support/hostileTexts';
import { dropFiles, type Visit } from '../support/openSite';
import { elsewhere, type NotingHost } from '../support/plainHosts';
import { opened, picture, sharedSite } from '../support/sharedSite';
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

  it('cells with scripts, links, templates, control characters and formulas are shown as text and nothing else', async () => {
    const visit = await site.visit();
    const { page, errors } = visit;
    const dialogs: string[] = [];
    page.on('dialog', (dialog) => {
      dialogs.push(dialog.message());
      void dialog.dismiss();
    });
    await page.goto(`${site.url}/records/`);
    await page
      .getByRole('row', { name: /readings\.csv/ })
      .first()
      .waitFor(opened);
    await dropFiles(page, [
      ...hostileFleet(outside.url),
      { name: 'zero.csv', content: 'unit,frame\nA\u0000B,<script>\n' },
    ]);
    await page.getByText(/Your 9 files are open/).waitFor(opened);
    await page.getByRole('row', { name: /zero\.csv.*zero bytes/ }).waitFor();
    await picture(page, 'hostile-records');
    const script = `<script>window.${flag}=1</script>`;
    const shown: Record<string, number> = {};
    const links = page.locator('nav[aria-label=Pages] a');
    for (const name of await links.allTextContents()) {
      await links.getByText(name, { exact: true }).click();
      await page.getByRole('heading', { level: 1 }).filter({ hasText: name }).waitFor(opened);
      await page
        .getByText(/follows here/)
        .first()
        .waitFor({ state: 'detached', ...opened });
      if ((await page.locator('figure [role=img]').count()) > 0)
        await page.locator('figure [role=img] svg').first().waitFor(opened);
      await picture(page, `hostile-${name.toLowerCase()}`);
      shown[name] = await page.getByText(script).count();
      const made = await page
        .locator('main')
        .evaluate(
          (main) =>
            main.querySelectorAll(
              'script, img, iframe, object, embed, base, link, meta, style, video, parsererror',
            ).length,
        );
      expect(made, name).toBe(0);
    }
    await links.getByText('Fleet', { exact: true }).click();
    await page.locator('[aria-label="Units"] tbody a').getByText(`${script} 1`, { exact: true }).click();
    await page.getByRole('heading', { name: `Unit ${script} 1` }).waitFor(opened);
    await page.locator('figure [role=img] svg').first().waitFor(opened);
    await picture(page, 'hostile-unit');
    for (const name of ['Fleet', 'Sisters', 'Spares', 'Tables']) expect(shown[name], name).toBeGreaterThan(0);
    await page.goBack();
    await page.locator('[aria-label="Units"] tbody a').getByText('bell', { exact: false }).first().click();
    await page.getByRole('heading', { name: 'Unit bell' }).waitFor(opened);
    await page.locator('figure [role=img] svg').first().waitFor(opened);
    await picture(page, 'hostile-controls');
    expect(await page.evaluate((name) => name in window, flag)).toBe(false);
    expect(dialogs).toEqual([]);
    expect(errors).toEqual([]);
    expect(outside.reached).toEqual([]);
    expect(visit.outside).toEqual([]);
  });
});
