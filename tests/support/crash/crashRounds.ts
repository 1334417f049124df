import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { KeptState } from '../../../lib/analysis/engine/kept/KeptState';
import { serveSite } from '../../../lib/batch/serveSite.mjs';
import {
  type Act,
  type Draw,
  type Expected,
  nextAct,
  noteSaved,
  nothingYet,
  stateText,
  textOf,
} from './acts';
import { type ChromiumProcess, startChromium } from './chromiumProcess';
import { callEngine, engineHasOpened, engineSpeaks, noteEngine } from './engineInPage';
import { keptNow } from './keptInPage';

/** What came of crashes at random moments. */
export interface CrashResult {
  readonly rounds: number;
  readonly killed: { readonly browser: number; readonly tab: number };
  /** Acts that were acknowledged, and those that were under way at a crash: found done as a whole, or not at all. */
  readonly acknowledged: number;
  readonly underWay: { readonly done: number; readonly notDone: number };
  /** Every state found that no whole acts lead to. */
  readonly faults: readonly string[];
}

/** Longest time to the crash, ms: from the engine's first word in every other round, and from when it has opened what is kept. */
const longest_ms = 4_000;

/**
 * Uses the site's own engine at random and kills the tab or the whole browser at random moments; after each crash what lies in
 * the store must be what the acknowledged acts lead to, with or without the one that was under way.
 *
 * @param root folder of the built site
 * @param report told of every round
 */
export async function crashRounds(
  { root, rounds, seed }: { readonly root: string; readonly rounds: number; readonly seed: number },
  report: (sentence: string) => void,
): Promise<CrashResult> {
  const random = xoroshiro128plus(seed);
  const draw: Draw = (below) => uniformInt(random, 0, below - 1);
  const profile = mkdtempSync(join(tmpdir(), 'crash-profile-'));
  const site = await serveSite({ root, port: 0 });
  const url = site.url.replace(/\/$/, '');
  let chromium: ChromiumProcess | null = null;
  let expected = nothingYet;
  const saved: Uint8Array[] = [];
  const killed = { browser: 0, tab: 0 };
  const underWay = { done: 0, notDone: 0 };
  const faults: string[] = [];
  let acknowledged = 0;
  try {
    for (let round = 1; round <= rounds; round++) {
      if (chromium === null) {
        chromium = await startChromium(profile);
        await noteEngine(chromium.context);
      }
      const kind = draw(2) === 0 ? 'browser' : 'tab';
      const page = await chromium.context.newPage();
      await page.goto(`${url}/records/`);
      await (round % 2 === 0 ? engineSpeaks(page) : engineHasOpened(page));
      const crash = crashAfter(draw(longest_ms), kind, chromium, page);
      let pending: Act | null = null;
      while (!crash.isOver()) {
        const act = nextAct(draw, acknowledged + round * 1_000, expected, saved);
        pending = act;
        const next = await Promise.race([done(page, act, expected, saved), crash.over]).catch(
          (error: unknown) => (crash.isOver() ? null : Promise.reject(error)),
        );
        if (next === null || next === undefined) break;
        expected = next;
        pending = null;
        acknowledged++;
      }
      await crash.over;
      killed[kind]++;
      if (kind === 'browser') {
        chromium = await startChromium(profile);
        await noteEngine(chromium.context);
      } else await page.close();
      const found = await keptNow(chromium.context, url);
      const text = stateText(found.files, found.journal);
      const outcomes = [expected, ...(pending?.after(expected) ?? [])];
      const matching = outcomes.findIndex((one) => textOf(one) === text);
      if (pending !== null) underWay[matching > 0 ? 'done' : 'notDone']++;
      const next = outcomes[matching];
      if (next === undefined) {
        faults.push(
          `round ${round}, ${kind}, ${pending?.name ?? 'no act'} under way: ${text} instead of ${textOf(expected)}`,
        );
        break;
      }
      expected = next;
      report(
        `round ${round}: ${kind} killed during ${pending?.name ?? 'no act'}; files ${found.files.size}, entries ${found.journal.length}, acts acknowledged so far ${acknowledged}`,
      );
    }
  } finally {
    await chromium?.kill();
    await site.close();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
  return { rounds: killed.browser + killed.tab, killed, acknowledged, underWay, faults };
}

/** Does an act and says what is expected to be kept now that it is acknowledged. */
async function done(page: Page, act: Act, before: Expected, saved: Uint8Array[]): Promise<Expected> {
  // The lock of a tab that has crashed is free a moment later.
  while (!((await callEngine(page, 'keptState', [0], false)) as KeptState).writes)
    await page.waitForTimeout(20);
  if (act.first !== undefined) await callEngine(page, act.first.name, act.first.words, false);
  const came = await callEngine(page, act.name, act.words, act.opens);
  if (act.name === 'saveWorkspace') {
    const bytes = Uint8Array.from(came as number[]);
    const content = await noteSaved(bytes);
    if (textOf(content) !== textOf(before)) throw new Error('a saved workspace is not what was kept');
    if (content.files.size > 0) saved.push(bytes);
    return before;
  }
  if (act.name === 'note' || act.name === 'takeNotesBack' || act.name === 'decide')
    return act.after(before)[0] as Expected;
  if (!(came as { ok: boolean }).ok) return before;
  const names = (await callEngine(page, 'ownFileNames', [], false)) as readonly string[];
  const fits = act.after(before).find(({ files }) => files.size === names.length);
  if (fits === undefined) throw new Error(`files after ${act.name}: ${names.join(', ')}`);
  return fits;
}

/** Kills the tab or the browser after a time; `over` resolves with null when it has happened. */
function crashAfter(time_ms: number, kind: 'browser' | 'tab', chromium: ChromiumProcess, page: Page) {
  let isOver = false;
  const over = new Promise<void>((resolve) => setTimeout(resolve, time_ms)).then(async () => {
    isOver = true;
    if (kind === 'browser') await chromium.kill();
    else {
      const crashed = page.waitForEvent('crash');
      // Where the round has failed before, its browser is gone.
      crashed.catch(() => {});
      const devtools = await chromium.context.newCDPSession(page);
      devtools.send('Page.crash').catch(() => {});
      await crashed;
    }
    return null;
  });
  over.catch(() => {});
  return { over, isOver: () => isOver };
}
