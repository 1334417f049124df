import { readFileSync } from 'node:fs';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Visit } from '../support/openSite';
import { opened, picture, sharedSite, walkTo } from '../support/sharedSite';

const site = sharedSite();
/** One visitor for all: the demo fleet is opened once. */
let visitor: Visit;
beforeAll(async () => {
  visitor = await site.visit();
  await visitor.page.goto(`${site.url}/sisters/`);
});
afterEach(() => {
  expect(visitor.outside).toEqual([]);
  expect(visitor.errors).toEqual([]);
});

describe('who wears unlike the others', () => {
  it('is said first, with the workshop that leaves readings high; units regroup, and lead to their page', async () => {
    const { page } = visitor;
    await walkTo(page, '/sisters/?series=thrust_play');
    const answer = page.locator('.answer').first();
    await answer.waitFor(opened);
    expect(await answer.textContent()).toContain('O-3005 wears 1.66 times as fast as its sisters');
    await page.getByText(/Fulmar Rotor Shop lies high/).waitFor(opened);
    await page.getByText(/one reading repeats within 0\.012/).waitFor(opened);
    await page.getByLabel('Compared by').selectOption('start');
    await page
      .getByRole('columnheader', { name: /Own start/ })
      .first()
      .waitFor(opened);
    await page.getByLabel('Sisters are units of one').selectOption('frame+duty');
    await page.getByRole('heading', { name: /Osprey, over 6,000 h a year/ }).waitFor(opened);
    // The address holds the view, so that a link reproduces it.
    expect(page.url()).toMatch(/series=thrust_play.*of=start.*by=frame/);
    await picture(page, 'sisters');
    await page.getByRole('link', { name: 'O-3005' }).first().click();
    await page.getByRole('heading', { name: 'Unit O-3005' }).waitFor(opened);
  });
});

describe('the clearance circle', () => {
  it('shows the readings of a chosen overhaul, which the address holds', async () => {
    const { page } = visitor;
    await walkTo(page, '/unit/?id=O-3002&series=tip_turbine_mean&circle=OH-0122+found');
    const circle = page.getByRole('region', { name: 'Clearance circle' });
    // The sentence stands once to be read and once as the picture's description.
    await circle
      .getByText(/As found on 2018-02-28 .* Three positions were read/)
      .first()
      .waitFor(opened);
    await circle.getByLabel('Readings shown').selectOption({ label: '2019-12-08, as left' });
    await circle
      .getByText(/As left on 2019-12-08/)
      .first()
      .waitFor(opened);
    expect(page.url()).toMatch(/circle=OH-\d+\+left/);
    // On screen; a copy for paper follows when the page is idle.
    await circle
      .getByText(/gaps drawn about \d+ times their size/)
      .first()
      .waitFor(opened);
    await picture(page, 'circle');
  });
});

describe('what to order by which day', () => {
  it('is said first; a plan is tried out beside the present one; the calendar is a file', async () => {
    const { page } = visitor;
    await walkTo(page, '/spares/');
    const answer = page.locator('.answer').first();
    await answer.waitFor(opened);
    expect(await answer.textContent()).toMatch(/^\d+ parts to order for [\d\s]+EUR/);
    await page.getByText('Nothing is changed.').waitFor(opened);
    const changed = page.getByText(/^Overhauls .* parts? changed\.$/);
    await page.getByLabel('Lead times, multiplied by').fill('2');
    await changed.waitFor(opened);
    const before = await changed.textContent();
    await page.getByLabel('Overhaul interval, % of plan').fill('120');
    await expect.poll(() => changed.textContent(), opened).not.toBe(before);
    expect(page.url()).toContain('interval=120');
    await picture(page, 'spares');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as an iCalendar file' }).click();
    const file = await (await download).path();
    const text = readFileSync(file, 'utf8');
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(text.match(/BEGIN:VEVENT/g)?.length).toBeGreaterThan(20);
  });

  it('advice stands on Fleet and Unit, and follows the accepted risk', async () => {
    const { page } = visitor;
    await walkTo(page, '/unit/?id=O-3005&risk=50');
    const section = page.getByRole('region', { name: 'At its overhauls' });
    await section
      .getByRole('row', { name: /bring forward/ })
      .first()
      .waitFor(opened);
    expect(await section.getByLabel('Accepted risk, %').inputValue()).toBe('50');
    await page.getByRole('link', { name: 'Fleet' }).click();
    await page.getByText(/^Of 52 units, at an accepted risk of 10\s%: bring forward/).waitFor(opened);
  });
});
