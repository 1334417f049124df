import type { Locator, Page } from 'playwright-core';

/** More stops than any page has: a walk that needs more goes round in a circle. */
const mostStops = 500;

/** How long a page that is still being laid out may take to show where the focus is, ms. */
const layoutPatience_ms = 2_000;
const pause_ms = 100;

/** What is wrong with how the focus shows itself, or null: not in sight, covered, or without an outline. */
export function focusFaultOf(page: Page): Promise<string | null> {
  return page.evaluate(() => {
    const element = document.activeElement;
    // Behind the last stop lies the browser's own frame.
    if (element === null || element === document.body) return null;
    // A part of a control that the browser makes, such as the button of a calendar, shows the focus in its stead.
    if (!element.matches(':focus')) return null;
    const label = element instanceof HTMLInputElement ? (element.labels?.[0]?.textContent ?? '') : '';
    const words = element.getAttribute('aria-label') ?? (label === '' ? element.textContent : label) ?? '';
    const name = `${element.tagName.toLowerCase()} '${words.trim().slice(0, 40)}'`;
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    if (outlineStyle === 'none' || Number.parseFloat(outlineWidth) < 2)
      return `${name} has the focus without an outline`;
    const box = element.getBoundingClientRect();
    const [left, right] = [Math.max(box.left, 0), Math.min(box.right, window.innerWidth)];
    const [top, bottom] = [Math.max(box.top, 0), Math.min(box.bottom, window.innerHeight)];
    if (right - left < 1 || bottom - top < 1) return `${name} has the focus out of sight`;
    // What lies over a picture lets the pointer through, and so cannot be found by a place.
    if (getComputedStyle(element).pointerEvents === 'none') return null;
    const places = [0.1, 0.5, 0.9].flatMap((x) =>
      [0.2, 0.5, 0.8].map((y) => [left + x * (right - left), top + y * (bottom - top)] as const),
    );
    const isSeen = places.some(([x, y]) => {
      const there = document.elementFromPoint(x, y);
      return there !== null && (element.contains(there) || there.contains(element));
    });
    return isSeen ? null : `${name} has the focus and is covered`;
  });
}

/** What stays wrong with how the focus shows itself, or null: what moves under the focus comes to rest first. */
async function lastingFaultOf(page: Page): Promise<string | null> {
  const end = Date.now() + layoutPatience_ms;
  let fault = await focusFaultOf(page);
  while (fault !== null && Date.now() < end) {
    await page.waitForTimeout(pause_ms);
    fault = await focusFaultOf(page);
  }
  return fault;
}

/**
 * Presses Tab, or Shift+Tab, until something has the focus; every stop on the way must show that it has it.
 *
 * @param faults every stop that does not is added to them
 * @throws Error if it is not reached
 */
export async function tabTo(
  page: Page,
  wanted: Locator,
  faults: string[],
  key: 'Tab' | 'Shift+Tab' = 'Tab',
): Promise<void> {
  for (let stop = 0; stop < mostStops; stop++) {
    await page.keyboard.press(key);
    const fault = await lastingFaultOf(page);
    if (fault !== null) faults.push(fault);
    // In one look: between two the page may have put another element in its place.
    if (await wanted.evaluateAll(([first]) => first !== undefined && first === document.activeElement))
      return;
  }
  throw new Error(`not reached with ${mostStops} presses of ${key}: ${wanted}`);
}
