import type { Page } from 'playwright-core';

/** Least width and height of a target (WCAG 2.2, success criterion 2.5.8), CSS px. */
const leastTarget_px = 24;

/**
 * What is wrong with the layout of a page as it stands: a page that scrolls sideways, words that are cut, controls that lie over
 * one another, and targets that are too small and too near to others (2.5.8 with its exceptions for sentences and spacing).
 */
export async function layoutFaultsOf(page: Page): Promise<readonly string[]> {
  await showWholePage(page);
  return page.evaluate((least_px) => {
    interface Box {
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    }
    const faults: string[] = [];
    const named = (element: Element) => {
      const words = element.getAttribute('aria-label') ?? element.textContent ?? '';
      return `<${element.tagName.toLowerCase()}> '${words.trim().slice(0, 40)}'`;
    };
    const isSeen = (element: Element) =>
      element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    const isHiddenFromSight = (element: Element) => element.closest('.visuallyHidden, .skipLink') !== null;

    /** The part of a box that no scrolling or clipping ancestor hides; null if none. */
    const shownPart = (element: Element, box: Box): Box | null => {
      let part = box;
      for (let around = element.parentElement; around !== null; around = around.parentElement) {
        const { overflowX, overflowY } = getComputedStyle(around);
        if (overflowX === 'visible' && overflowY === 'visible') continue;
        if (around === document.documentElement || around === document.body) continue;
        const edge = around.getBoundingClientRect();
        part = {
          left: Math.max(part.left, edge.left),
          top: Math.max(part.top, edge.top),
          right: Math.min(part.right, edge.right),
          bottom: Math.min(part.bottom, edge.bottom),
        };
        if (part.right - part.left <= 1 || part.bottom - part.top <= 1) return null;
      }
      return part;
    };

    // Sideways.
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth > width) {
      const wide = [...document.querySelectorAll('body *')].filter((element) => {
        const box = element.getBoundingClientRect();
        const part = isSeen(element) ? shownPart(element, box) : null;
        return part !== null && part.right > width + 1 && !isHiddenFromSight(element);
      });
      faults.push(`the page scrolls sideways: ${wide.slice(0, 3).map(named).join(', ')}`);
    }

    // Words that are cut.
    const worded = 'button, a, label, legend, summary, caption, th, dt, dd, h1, h2, h3, figcaption, p, input';
    for (const element of document.querySelectorAll<HTMLElement>(worded)) {
      if (!isSeen(element) || isHiddenFromSight(element)) continue;
      const { overflowX } = getComputedStyle(element);
      const clips = element instanceof HTMLInputElement || overflowX === 'hidden' || overflowX === 'clip';
      if (clips && element.scrollWidth > element.clientWidth + 1) faults.push(`cut: ${named(element)}`);
    }
    for (const word of document.querySelectorAll('[role=img] svg text')) {
      const edge = word.closest('[role=img]')?.getBoundingClientRect();
      const box = word.getBoundingClientRect();
      if (edge === undefined || edge.width === 0 || (word.textContent ?? '').trim() === '') continue;
      if (box.left < edge.left - 1 || box.right > edge.right + 1 || box.bottom > edge.bottom + 1)
        faults.push(`cut in a picture: ${named(word)}`);
    }

    // Targets: a box that is ticked is reached by its label, too.
    const controls = [
      ...document.querySelectorAll('a[href], button, input, select, summary, textarea'),
    ].filter((element) => isSeen(element) && !isHiddenFromSight(element));
    const targets = controls.flatMap((control) => {
      const ticked = control instanceof HTMLInputElement && /^(checkbox|radio)$/.test(control.type);
      const element = (ticked ? control.closest('label') : null) ?? control;
      return [...element.getClientRects()].flatMap((box) => {
        const part = shownPart(element, box);
        if (part === null) return [];
        const isWhole = part.right - part.left > box.width - 1 && part.bottom - part.top > box.height - 1;
        return [{ control, element, part, isWhole }];
      });
    });
    const isFixed = (element: Element) => {
      for (let at: Element | null = element; at !== null; at = at.parentElement)
        if (getComputedStyle(at).position === 'fixed') return true;
      return false;
    };
    for (const [place, one] of targets.entries()) {
      for (const other of targets.slice(place + 1)) {
        if (one.element.contains(other.element) || other.element.contains(one.element)) continue;
        const across = Math.min(one.part.right, other.part.right) - Math.max(one.part.left, other.part.left);
        const down = Math.min(one.part.bottom, other.part.bottom) - Math.max(one.part.top, other.part.top);
        // What lies over the page on purpose can be moved from it by scrolling.
        if (across <= 1 || down <= 1 || isFixed(one.element) !== isFixed(other.element)) continue;
        faults.push(`one over the other: ${named(one.element)} and ${named(other.element)}`);
      }
    }
    // What is half scrolled out of its box comes into sight as a whole.
    const small = targets.filter(
      ({ part, isWhole }) =>
        isWhole && (part.right - part.left < least_px - 0.5 || part.bottom - part.top < least_px - 0.5),
    );
    const isInSentence = (element: Element) => {
      if (!getComputedStyle(element).display.startsWith('inline')) return false;
      const block = element.closest('p, li, dd, td, figcaption, caption, label, legend');
      return block !== null && (block.textContent ?? '').trim() !== (element.textContent ?? '').trim();
    };
    const middle = ({ left, right, top, bottom }: Box) => ({ x: (left + right) / 2, y: (top + bottom) / 2 });
    for (const one of small) {
      if (isInSentence(one.element)) continue;
      const { x, y } = middle(one.part);
      const near = targets.find((other) => {
        if (other.control === one.control) return false;
        if (small.includes(other)) {
          const at = middle(other.part);
          if (Math.hypot(at.x - x, at.y - y) < least_px - 0.5) return true;
        }
        const { left, right, top, bottom } = other.part;
        const [dx, dy] = [Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom)];
        return Math.hypot(dx, dy) < least_px / 2 - 0.5;
      });
      if (near === undefined) continue;
      const size = `${Math.round(one.part.right - one.part.left)} by ${Math.round(one.part.bottom - one.part.top)} px`;
      faults.push(`too small, ${size}: ${named(one.element)} beside ${named(near.element)}`);
    }
    return [...new Set(faults)];
  }, leastTarget_px);
}

/** Heads of tables that do not stay in sight while their box, or the window, is scrolled down. */
export async function headsNotStaying(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const lost: string[] = [];
    for (const table of document.querySelectorAll('table')) {
      const head = table.querySelector('thead th');
      if (head === null || !table.checkVisibility()) continue;
      const box = table.closest('.tableBox');
      const name = table.caption?.textContent ?? head.textContent;
      const isBoxed = box !== null && box.scrollHeight > box.clientHeight + 40;
      const { top, height } = table.getBoundingClientRect();
      if (!isBoxed && (box !== null || height <= window.innerHeight)) continue;
      if (isBoxed) box.scrollTop = box.scrollHeight;
      else window.scrollTo(0, window.scrollY + top + height / 2);
      const edge_px = isBoxed ? box.getBoundingClientRect().top : 0;
      const from_px = head.getBoundingClientRect().top - edge_px;
      if (isBoxed) box.scrollTop = 0;
      else window.scrollTo(0, 0);
      if (from_px < -1 || from_px > 60)
        lost.push(`${name}: head ${Math.round(from_px)} px from the top of what is scrolled`);
    }
    return lost;
  });
}

/** Lays out what is below the fold as well: otherwise its boxes are of a guessed size until they come near. */
function showWholePage(page: Page): Promise<void> {
  return page.evaluate(() => {
    const name = 'wholePage';
    const root = document.documentElement;
    if (name in root.dataset) return;
    root.dataset[name] = '';
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('.longTable { content-visibility: visible !important }');
    document.adoptedStyleSheets.push(sheet);
  });
}
