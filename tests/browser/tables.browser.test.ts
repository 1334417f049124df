import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dropFiles } from '../support/openSite';
import { opened, picture, sharedSite } from '../support/sharedSite';

const site = sharedSite();
const files = ['kestrel-wide.csv', 'limits.csv'].map((name) => ({
  name,
  content: readFileSync(`data/examples/${name}`),
}));

describe('tables in force', () => {
  it('are read in the demo fleet; a limit of own files is edited, its effect seen, applied, undone and done again, and kept', async () => {
    const { page, outside, errors } = await site.visit();
    await page.goto(`${site.url}/tables/?table=plan`);
    await page.getByText('rows of the plan of the demo fleet are in force').waitFor(opened);
    expect(await page.getByRole('button', { name: /^Apply/ }).count()).toBe(0);
    await page.getByLabel('Table').selectOption('limits');
    await page.getByText('18 limits of the demo fleet are in force.').waitFor(opened);
    expect(new URL(page.url()).search).toBe('');

    await page.getByRole('link', { name: 'Records', exact: true }).first().click();
    await page.getByText('The demo fleet is open').waitFor(opened);
    await dropFiles(page, files);
    await page.getByText(/Your 2 files are open/).waitFor(opened);
    await page.getByRole('link', { name: 'Tables' }).click();
    await page.getByText('6 limits are in force.').waitFor(opened);
    await page.getByLabel('Your initials').fill('AB');
    await picture(page, 'tables-1366');

    const limit = page.locator('[data-place="0 3"]');
    await page.locator('[data-place="0 0"]').focus();
    for (let time = 0; time < 3; time++) await page.keyboard.press('ArrowRight');
    expect(await limit.evaluate((cell) => cell === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('0,25');
    await page.keyboard.press('Enter');
    await page.getByText('Write 0.25 with a decimal point.').waitFor();
    await limit.click();
    await page.getByLabel('limit of row 1').fill('0.25');
    // A click elsewhere keeps what was typed, too.
    await page.locator('[data-place="2 0"]').click();
    await page.keyboard.press('Escape');
    await limit.getByText('0.25').waitFor();
    await page.getByRole('button', { name: 'Show the effect' }).click();
    await page.getByText(/verdicts? on \d+ units? of 8 would change/).waitFor(opened);
    await picture(page, 'tables-effect-1366');
    const effect = page.getByRole('region', { name: 'Verdicts that the edits would change' });
    const thrustPlay = effect.getByRole('row', { name: /Thrust play, upper limit/ });
    expect(await thrustPlay.count()).toBeGreaterThan(0);
    expect(await thrustPlay.count()).toBe((await effect.getByRole('row').count()) - 1);

    await page.getByRole('button', { name: 'Apply 1 edited row' }).click();
    await page.getByText('6 limits are in force; 1 of them was edited here.').waitFor(opened);
    const row = page.getByRole('row', { name: /edited here, AB/ });
    await row.getByRole('button', { name: '0.25' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('tables-answer');

    await page.keyboard.press('Control+Z');
    await page.getByText('6 limits are in force.').waitFor(opened);
    await page.getByRole('button', { name: 'Redo: 1 edited row of limits' }).click();
    await row.waitFor(opened);
    await page.reload();
    await row.waitFor(opened);
    await page.getByRole('link', { name: 'Records', exact: true }).first().click();
    const journal = page.getByRole('region', { name: /entries, the newest first/ });
    await journal.getByRole('row', { name: /done again.*limit 0\.36.*limit 0\.25/ }).waitFor(opened);
    await journal.getByRole('row', { name: /undone.*limit 0\.25.*limit 0\.36/ }).waitFor();
    await picture(page, 'tables-journal-1366');
    await page.setViewportSize({ width: 390, height: 844 });
    await page.getByRole('link', { name: 'Tables' }).click();
    await row.waitFor(opened);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await picture(page, 'tables-390');
    expect(outside).toEqual([]);
    expect(errors).toEqual([]);
  });
});
