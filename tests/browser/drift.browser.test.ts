import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { opened, picture, sharedSite } from '../support/sharedSite';

const site = sharedSite();

describe('whose reading is moving, and since when', () => {
  it('is said first, with its charts; settings stand in the address; an acknowledgement survives a reload and is taken back', async () => {
    const { page, outside, errors } = await site.visit();
    await page.goto(`${site.url}/drift/`);
    const answer = page.locator('.answer').first();
    await answer.waitFor(opened);
    const sentence = (await answer.textContent()) ?? '';
    expect(sentence).toMatch(/^32 series of units have an open signal/);
    expect(sentence).toContain('H-2005, runout, high since 2021-03-24');
    expect(sentence).toContain('persists through reassembly: points to the shaft');
    expect(sentence).toContain('gone as left: points to seating or dirt in the contact faces');
    await page.getByText(/about 26 signals would come by chance alone .* 68 came/).waitFor();

    const findings = page.getByRole('region', { name: 'Signals' });
    await findings.getByRole('button', { name: 'Show runout of H-2005' }).click();
    await page.getByRole('heading', { name: 'H-2005: Runout' }).waitFor(opened);
    await page.getByRole('heading', { name: 'Forecast residuals' }).waitFor(opened);
    expect(page.url()).toContain('unit=H-2005');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('unit-charts');
    await page.getByText(/Merrow Works: readings as left/).waitFor(opened);
    await picture(page, 'drift');

    const budget = page.getByLabel('False signals a year, whole fleet');
    await budget.fill('0.5');
    await budget.press('Enter');
    await page.getByText(/about 6 signals would come by chance alone/).waitFor(opened);
    expect(page.url()).toContain('budget=0.5');
    await budget.fill('-3');
    await budget.press('Tab');
    await page.getByText(/A number from 0.01 to 1\u202f000/).waitFor();
    expect(page.url()).toContain('budget=0.5');

    await findings.getByRole('button', { name: 'Acknowledge runout of O-3011' }).click();
    const form = page.getByRole('form', { name: 'Acknowledge runout of O-3011' });
    await form.getByRole('button', { name: 'Acknowledge' }).click();
    await form.getByText('Write what was found or decided').waitFor();
    await form.getByLabel('Remark').fill('dirt in the contact faces, cleaned');
    await form.getByLabel('Initials').fill('AB');
    await form.getByRole('button', { name: 'Acknowledge' }).click();
    await findings.getByText('1 acknowledged finding').waitFor(opened);
    await expect.poll(() => answer.textContent(), opened).not.toContain('O-3011, runout');

    await page.reload();
    await findings.getByText('1 acknowledged finding').waitFor(opened);
    await page.getByRole('link', { name: 'Records' }).click();
    const row = page.getByRole('row', { name: /signals of O-3011, runout, up to 2023-08-12 \(demo fleet\)/ });
    await row.getByText('acknowledged: dirt in the contact faces, cleaned').waitFor(opened);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the whole journal as CSV' }).click();
    expect(readFileSync(await (await download).path(), 'utf8')).toContain(
      'acknowledged: dirt in the contact faces, cleaned',
    );

    await page.getByRole('link', { name: 'Drift' }).click();
    await findings.getByText('1 acknowledged finding').click(opened);
    await findings.getByRole('button', { name: 'Take back runout of O-3011' }).click();
    await expect.poll(() => answer.textContent(), opened).toContain('O-3011, runout');
    expect(outside).toEqual([]);
    expect(errors).toEqual([]);
  });
});
