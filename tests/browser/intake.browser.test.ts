import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dropFiles } from '../support/openSite';
import { opened, sharedSite } from '../support/sharedSite';

const site = sharedSite();

const folder = 'data/examples/sheets';

describe('workshops’ own sheets', () => {
  it('are dropped together, their questions answered, and end as a fitted fleet that a reload keeps', async () => {
    const { page, outside, errors } = await site.visit();
    await page.goto(`${site.url}/records/`);
    await page
      .getByRole('row', { name: /readings\.csv/ })
      .first()
      .waitFor(opened);
    const names = readdirSync(folder).filter((name) => name.endsWith('.csv'));
    await dropFiles(
      page,
      names.map((name) => ({ name, content: readFileSync(join(folder, name)) })),
    );
    await page.getByRole('heading', { name: 'Questions', exact: true }).waitFor(opened);
    const before = await page.locator('.answer').first().textContent();
    const groups = await page.locator('fieldset').all();
    expect(groups.length).toBeGreaterThan(3);
    for (const group of groups) {
      const likelier = group.getByLabel(/likelier/);
      await ((await likelier.count()) > 0 ? likelier.first() : group.getByRole('radio').first()).check();
    }
    await page.getByRole('button', { name: `Apply ${groups.length} answers` }).click();
    await page.getByText('Decisions in force').first().waitFor(opened);
    await expect.poll(() => page.locator('.answer').first().textContent(), opened).not.toBe(before);
    const used = (text: string | null) =>
      Number(/readings, ([\d\s]+) used/.exec(text ?? '')?.[1]?.replace(/\s/g, ''));
    expect(used(await page.locator('.answer').first().textContent())).toBeGreaterThan(used(before));

    await page.getByRole('link', { name: 'Fleet' }).click();
    await page.getByRole('heading', { name: 'Fleet', level: 1 }).waitFor(opened);
    await page.locator('[aria-label="Units"] tbody tr').first().waitFor(opened);
    const units = await page.locator('[aria-label="Units"] tbody tr').count();
    expect(units).toBeGreaterThan(5);
    await page.reload();
    await page.locator('[aria-label="Units"] tbody tr').first().waitFor(opened);
    await expect.poll(() => page.locator('[aria-label="Units"] tbody tr').count(), opened).toBe(units);
    expect(outside).toEqual([]);
    expect(errors).toEqual([]);
  });
});
