import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { writeFleetFolder } from '../../../lib/batch/bench/writeFleetFolder';
import { interactionTime } from '../../support/interactionTimes';
import { opened, sharedSite } from '../../support/sharedSite';
import { openFleet, settled } from '../../support/sitePages';

const site = sharedSite();
const folder = mkdtempSync(join(tmpdir(), 'interactions-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Longest time from an act of the reader's to the picture that follows. */
// Aim: 100 ms on two quiet cores; a machine that does other work needs room.
const longest_ms = 250;

const link = (page: Page, name: string) => page.getByRole('link', { name, exact: true }).first();

/** What a reader does on Fleet, and the way to other pages and back. */
async function timesOn(page: Page): Promise<Readonly<Record<string, number>>> {
  const times: Record<string, number> = {};
  const timed = async (name: string, act: () => Promise<void>) => {
    times[name] = await interactionTime(page, act);
    await settled(page);
  };
  const frame = page.getByLabel('Frame', { exact: true });
  await frame.focus();
  await timed('filter', () => page.keyboard.press('ArrowDown'));
  await timed('filter taken back', () => page.keyboard.press('ArrowUp'));
  const head = page.locator('[aria-label="Units"] thead button').nth(2);
  await head.scrollIntoViewIfNeeded();
  await timed('sort', () => head.click());
  await timed('sort the other way', () => head.click());
  const rows = page.locator('[aria-label="Units"] tbody tr');
  await timed('hover', async () => {
    for (const row of [0, 1, 2]) await rows.nth(row).hover();
  });
  for (const name of ['Sisters', 'Drift', 'Spares', 'Fleet'])
    await timed(`page ${name}`, () => link(page, name).click());
  return times;
}

function check(fleet: string, times: Readonly<Record<string, number>>): void {
  process.stdout.write(`${JSON.stringify({ fleet, times })}\n`);
  expect(Object.keys(times)).toHaveLength(9);
  expect(Object.entries(times).filter(([, time]) => time > longest_ms)).toEqual([]);
}

describe('the page answers at once', () => {
  it('with the demo fleet', async () => {
    const { page } = await site.visit();
    await openFleet(page, site.url);
    check('demo', await timesOn(page));
  });

  it('with 1,000 units and 200,000 readings', async () => {
    await writeFleetFolder(folder, { units: 1_000, unitsPerGroup: 250, partitioned: false });
    const { page } = await site.visit();
    await page.goto(`${site.url}/records/`);
    const files = readdirSync(folder).filter((name) => name.endsWith('.csv'));
    await page.getByLabel('Files', { exact: true }).setInputFiles(files.map((name) => join(folder, name)));
    await page.getByText('Your files: 6 files').waitFor(opened);
    await link(page, 'Fleet').click();
    await settled(page);
    check('1,000 units', await timesOn(page));
  });
});
