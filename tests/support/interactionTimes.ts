import type { Page } from 'playwright-core';

interface TimedWindow extends Window {
  timed?: number[];
}

/** Time that an event has to take to be told of, ms: the browser tells of none below it. */
const told_ms = 16;

/**
 * Longest time from an event of the reader's to the next picture on the screen, ms, as the browser itself measures it (Event Timing);
 * 16 where every event took less.
 */
export async function interactionTime(page: Page, act: () => Promise<void>): Promise<number> {
  await page.evaluate((threshold) => {
    const here = window as TimedWindow;
    if (here.timed === undefined)
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) here.timed?.push(duration);
      }).observe({ type: 'event', durationThreshold: threshold } as PerformanceObserverInit);
    here.timed = [];
  }, told_ms);
  await act();
  // An event is told of after the picture that follows it.
  await page.waitForTimeout(600);
  const times = await page.evaluate(() => (window as TimedWindow).timed ?? []);
  return times.reduce((longest, time) => Math.max(longest, time), told_ms);
}
