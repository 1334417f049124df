import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { dropFiles } from '../support/openSite';
import { opened, sharedSite } from '../support/sharedSite';

const site = sharedSite();

const files = [
  {
    name: 'overhauls.csv',
    content:
      'overhaul,unit,date,unit_hours\nA,W-1,2014-01-01,0\nB,W-1,2015-06-01,9000\nC,W-2,2014-01-01,0\nD,W-2,2016-06-01,12000\n',
  },
  {
    name: 'readings.csv',
    content:
      'overhaul,characteristic,stage,value,uom\nA,thrust_play,left,O.20,mm\nB,thrust_play,found,0.26,mm\nC,thrust_play,left,0.21,mm\nD,thrust_play,found,0.28,mm\n',
  },
];

async function records(page: Page): Promise<void> {
  await page.goto(`${site.url}/records/`);
  await page
    .getByRole('row', { name: /readings\.csv/ })
    .first()
    .waitFor(opened);
}

const kept = (page: Page, words: string) => page.locator('header').getByText(words).waitFor(opened);

async function saved(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return download.path();
}

describe('the workspace', () => {
  it('is carried in one sealed file to another browser, and one of two tabs writes', async () => {
    const { page, context, errors, outside } = await site.visit();
    await records(page);
    await dropFiles(page, files);
    await page.getByText(/Your 2 files are open/).waitFor(opened);
    await kept(page, 'saved in this browser');
    const heldRows = readFileSync(await saved(page, 'Save all held rows as CSV'), 'utf8');
    const tables = await page.locator('main table').allInnerTexts();
    await page.getByText('Seal it with a passphrase').click();
    await page.getByLabel('Passphrase', { exact: true }).fill('two words');
    await page.getByRole('button', { name: 'Save the workspace file' }).click();
    await page.getByText('was not typed twice alike').waitFor(opened);
    await page.getByLabel('Passphrase again').fill('two words');
    const workspace = readFileSync(await saved(page, 'Save the workspace file'));
    expect(workspace.includes('readings.csv')).toBe(false);

    const other = await context.newPage();
    await other.goto(`${site.url}/`);
    await other.getByText('has this page open and writes').waitFor(opened);
    await other.getByRole('button', { name: 'Take over writing' }).click(opened);
    await page.getByText('has taken over writing').waitFor(opened);
    await kept(other, 'saved in this browser');
    await kept(page, 'another tab writes');
    await context.close();

    const second = await site.visit();
    await records(second.page);
    const file = { name: 'fleet.workspace', mimeType: 'application/octet-stream', buffer: workspace };
    await dropFiles(second.page, [{ name: file.name, content: workspace }]);
    await second.page.getByLabel('Passphrase of fleet.workspace').fill('no such words');
    await second.page.getByRole('button', { name: 'Unseal' }).click();
    await second.page.getByText(/fleet\.workspace: .*passphrase/).waitFor(opened);
    await second.page.getByLabel('Passphrase of fleet.workspace').fill('two words');
    await second.page.getByRole('button', { name: 'Unseal' }).click();
    await second.page.getByText('fleet.workspace holds 2 files').waitFor(opened);
    await second.page.getByRole('button', { name: 'Open it' }).click();
    await second.page.getByText(/Your 2 files are open/).waitFor(opened);
    expect(readFileSync(await saved(second.page, 'Save all held rows as CSV'), 'utf8')).toBe(heldRows);
    expect(await second.page.locator('main table').allInnerTexts()).toEqual(tables);
    await second.page
      .getByLabel('Workspace file')
      .setInputFiles({ ...file, buffer: workspace.subarray(0, workspace.length - 40) });
    await second.page.getByText(/fleet\.workspace: /).waitFor(opened);
    await second.page.getByText(/Your 2 files are open/).waitFor(opened);
    expect([...errors, ...second.errors]).toEqual([]);
    expect([...outside, ...second.outside]).toEqual([]);
  });
});
