import { spawn } from 'node:child_process';
import { type BrowserContext, chromium } from 'playwright-core';
import { findChromium } from '../../chromium.mjs';
import { flags } from '../openSite';

/** A Chromium of its own with a profile on the disk, whose processes can be killed at once. */
export interface ChromiumProcess {
  readonly context: BrowserContext;
  /** SIGKILL to every process of it: nothing is closed, flushed or said. */
  kill(): Promise<void>;
}

/** Starts Chromium on a profile that outlives it. */
export async function startChromium(profile: string): Promise<ChromiumProcess> {
  const executable = findChromium();
  if (executable === null) throw new Error('no Chromium found: install it or set CHROMIUM_PATH');
  const own = ['--headless', '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'];
  // A group of its own: its helper processes are killed with it.
  const child = spawn(executable, [...flags, ...own], {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const exited = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stderr.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
    child.once('exit', () => reject(new Error(`Chromium did not start: ${said.slice(-500)}`)));
  });
  const browser = await chromium.connectOverCDP(address);
  const [context] = browser.contexts();
  if (context === undefined) throw new Error('Chromium has no context of its profile');
  return {
    context,
    async kill() {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
      await exited;
      await browser.close().catch(() => {});
    },
  };
}
