import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type DroppedTestFile, dropFiles } from '../support/openSite';
import { opened, sharedSite } from '../support/sharedSite';

const site = sharedSite();

function exampleFiles(): readonly DroppedTestFile[] {
  return ['kestrel-wide.csv', 'limits.csv'].map((name) => ({
    name,
    content: readFileSync(join('data/examples', name)),
  }));
}

describe('the main job', () => {
  it('shows the demo fleet, takes own files, follows a link to a unit, and a reload keeps the view', async () => {
    const { page, outside, errors } = await site.visit(undefined, 'allow');
    await page.goto(`${site.url}/`);
    await page
      .getByText(/of 52 units reach/)
      .first()
      .waitFor(opened);
    await page.locator('figure [role=img] svg').first().waitFor(opened);
    await expect.poll(() => page.locator('[aria-label="Units"] tbody tr').count(), opened).toBe(52);
    await page
      .getByText(/synthetic/i)
      .first()
      .waitFor();

    await page.getByRole('link', { name: 'Records' }).click();
    await page.getByText('Drop your workshops').waitFor();
    await dropFiles(page, exampleFiles());
    await page
      .getByText(/Your files/)
      .first()
      .waitFor(opened);
    const table = page.getByRole('row', { name: /kestrel-wide\.csv/ });
    await table.waitFor();

    await page.getByRole('link', { name: 'Fleet' }).click();
    await page.getByRole('heading', { name: 'Fleet', level: 1 }).waitFor(opened);
    await page.locator('[aria-label="Units"] tbody tr').first().waitFor();
    await expect.poll(() => page.locator('[aria-label="Units"] tbody tr').count(), opened).toBe(8);
    const link = page.locator('[aria-label="Units"] tbody a').first();
    const unit = (await link.textContent()) ?? '';
    await link.click();
    await page.getByRole('heading', { name: `Unit ${unit}` }).waitFor();
    await page.locator('figure [role=img] svg').first().waitFor(opened);
    expect(page.url()).toContain(`/unit/?id=${unit}`);
    const sentence = await page.locator('.answer').first().textContent();

    await page.reload();
    await page.getByRole('heading', { name: `Unit ${unit}` }).waitFor(opened);
    await page.locator('.answer').first().waitFor(opened);
    expect(await page.locator('.answer').first().textContent()).toBe(sentence);

    await page.getByRole('link', { name: 'Records' }).click();
    await page.getByRole('button', { name: 'Open the demo fleet' }).click();
    await page
      .getByText(/Demo fleet/)
      .first()
      .waitFor(opened);
    await page.getByRole('link', { name: 'Fleet' }).click();
    await page.getByRole('heading', { name: 'Fleet', level: 1 }).waitFor(opened);
    await page
      .getByText(/of 52 units reach/)
      .first()
      .waitFor(opened);
    expect(outside).toEqual([]);
    expect(errors).toEqual([]);
  });

  it('keeps filters in the address: a link reproduces the view', async () => {
    const { page } = await site.visit();
    await page.goto(`${site.url}/?frame=Lark&series=thrust_play`);
    await page.locator('[aria-label="Units"] tbody tr').first().waitFor(opened);
    const rows = await page.locator('[aria-label="Units"] tbody tr').count();
    expect(rows).toBeGreaterThan(0);
    expect(rows).toBeLessThan(52);
    for (const text of await page
      .locator('[aria-label="Units"] tbody tr th, [aria-label="Units"] tbody tr td:first-child')
      .allTextContents()) {
      if (/^[HO]-/.test(text.trim())) throw new Error(`a unit of another frame is listed: ${text}`);
    }
  });
});
