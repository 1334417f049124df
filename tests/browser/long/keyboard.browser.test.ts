import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { focusFaultOf, tabTo } from '../../support/focusByKeyboard';
import { atRest, opened, picture, sharedSite } from '../../support/sharedSite';

const site = sharedSite();

const files = ['kestrel-wide.csv', 'limits.csv', 'sheets/07-thou-and-day-month.csv'].map((path) => ({
  name: path.replace(/.*\//, ''),
  mimeType: 'text/csv',
  buffer: readFileSync(`data/examples/${path}`),
}));

describe('the whole job by keyboard', () => {
  it.each([
    [
      'without an outline',
      '<button style="outline: none">one</button>',
      /'one' has the focus without an outline/,
    ],
    [
      'covered',
      '<button style="outline: 3px solid">one</button><div style="position: fixed; inset: 0; background: white"></div>',
      /'one' has the focus and is covered/,
    ],
    [
      'out of sight',
      '<button style="outline: 3px solid; position: fixed; left: -500px">one</button>',
      /'one' has the focus out of sight/,
    ],
  ])('a focus %s is found', async (_, markup, fault) => {
    const { page } = await site.visit();
    await page.setContent(markup);
    await page.keyboard.press('Tab');
    expect(await focusFaultOf(page)).toMatch(fault);
  });

  it('from own files to a question answered, a unit, a risk, a limit, spares, the paper and an undone decision', async () => {
    const { page, errors } = await site.visit();
    const faults: string[] = [];
    const press = (key: string) => page.keyboard.press(key);
    const to = (wanted: Parameters<typeof tabTo>[1], key?: 'Tab' | 'Shift+Tab') =>
      tabTo(page, wanted, faults, key);
    const toPage = async (name: string, heading: string) => {
      await to(pageLink(page, name), 'Shift+Tab');
      await press('Enter');
      await page.getByRole('heading', { level: 1, name: heading }).waitFor(opened);
    };
    await page.goto(`${site.url}/records/`);
    await page.getByText('The demo fleet is open').waitFor(opened);
    await atRest(page);

    // Own files, by the button of the drop zone.
    await to(page.getByRole('button', { name: 'Choose files' }));
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press('Enter')]);
    await chooser.setFiles(files);
    await page.getByText(/Your 3 files are open/).waitFor(opened);

    // The question whether 0.19 among thou is in millimetres.
    const question = page.getByRole('group', { name: /0\.19/ });
    const later = question.getByRole('radio', { name: 'Not now' });
    await to(later);
    await press('ArrowUp');
    expect(await later.isChecked()).toBe(false);
    await to(page.getByRole('button', { name: 'Apply 1 answer' }));
    await press('Enter');
    await page.getByRole('heading', { name: 'Decisions in force' }).waitFor(opened);
    await question.waitFor({ ...opened, state: 'detached' });
    await atRest(page);
    await picture(page, 'keyboard-answered');

    // From the Fleet's table to a unit, and back.
    await toPage('Fleet', 'Fleet');
    const link = page.locator('[aria-label="Units"] tbody a').first();
    await link.waitFor(opened);
    await to(link);
    const unit = (await link.textContent()) ?? '';
    await picture(page, 'keyboard-unit-link');
    await press('Enter');
    await page.getByRole('heading', { level: 1, name: `Unit ${unit}` }).waitFor(opened);
    await toPage('Fleet', 'Fleet');

    // The risk that is lived with.
    const risk = page.getByLabel('Accepted risk, %');
    await risk.waitFor(opened);
    await to(risk);
    await press('Control+A');
    await page.keyboard.type('40');
    await page.getByText(/at an accepted risk of 40\s%/).waitFor(opened);
    await expect.poll(() => page.url(), opened).toContain('risk=40');

    // One limit edited and applied, and the edit undone.
    await toPage('Tables', 'Tables');
    await page.getByText('6 limits are in force.').waitFor(opened);
    await to(page.locator('[data-place="0 0"]'));
    for (const place of ['0 1', '0 2', '0 3']) {
      await press('ArrowRight');
      await expect.poll(() => focused(page, 'data-place'), opened).toBe(place);
    }
    await press('Enter');
    // What is typed before the box has the focus is typed over the cell.
    await page.locator('input[aria-label="limit of row 1"]:focus').waitFor(opened);
    await press('Control+A');
    await page.keyboard.type('0.25');
    await press('Enter');
    await to(page.getByRole('button', { name: 'Apply 1 edited row' }));
    await picture(page, 'keyboard-apply');
    await press('Enter');
    await page.getByText('6 limits are in force; 1 of them was edited here.').waitFor(opened);
    await atRest(page);
    await to(page.getByRole('button', { name: /^Undo: 1 edited row/ }));
    await press('Enter');
    await page.getByText('6 limits are in force.').waitFor(opened);

    await toPage('Spares', 'Spares');
    await page.locator('.answer').first().waitFor(opened);
    await toPage('Report', 'Report');
    const print = page.getByRole('button', { name: 'Print or save as PDF' });
    await print.waitFor(opened);
    await to(print);
    await picture(page, 'keyboard-print');
    expect([...new Set(faults)]).toEqual([]);
    expect(errors).toEqual([]);
  });
});

/** An attribute of what has the focus. */
function focused(page: Page, attribute: string): Promise<string | null> {
  return page.evaluate((name) => document.activeElement?.getAttribute(name) ?? null, attribute);
}

/** The link to a page in the title block. */
function pageLink(page: Page, name: string) {
  return page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name, exact: true });
}
