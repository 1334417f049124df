import { afterAll, beforeAll, expect, it } from 'vitest';
import { hostileFleet } from '../../support/hostileFleet';
import { flag } from '../../support/hostileTexts';
import { dropFiles } from '../../support/openSite';
import { elsewhere, type NotingHost } from '../../support/plainHosts';
import { opened, picture, sharedSite } from '../../support/sharedSite';

const site = sharedSite();
let outside: NotingHost;
beforeAll(async () => {
  outside = await elsewhere();
});
afterAll(() => outside.close());

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
