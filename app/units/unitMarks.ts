import { unitAddress } from '../address/unitAddress';

let sheet: CSSStyleSheet | null = null;
let marked: string | null = null;

/** The style rules that mark a unit wherever it stands on the page: rows of tables, rows, cells and points of pictures, links. */
export function markRules(unit: string): string {
  const name = `"${CSS.escape(unit)}"`;
  const row = `[data-unit=${name}]`;
  const pick = `[data-pick=${name}]`;
  const address = `"${CSS.escape(unitAddress(unit))}"`;
  const followed = `"${CSS.escape(`${unitAddress(unit)}&`)}"`;
  return `@media screen {
    ${row} > :is(th, td) { background: var(--raised); border-bottom-color: var(--ink); }
    ${row} > :first-child { box-shadow: inset 4px 0 var(--ink); }
    a:is([href=${address}], [href^=${followed}]) { text-decoration-thickness: 3px; }
    ${pick} text { font-weight: 700; text-decoration: underline; }
    .mark-rect ${pick} path { opacity: 1; fill-opacity: 0; stroke: var(--ink); stroke-width: 1.5; stroke-dasharray: 6 3; }
    .mark-symbol ${pick} path { stroke-width: 4; }
  }`;
}

/**
 * Marks a unit everywhere on the page, and none if null. By one style rule: what shows units need not be drawn anew, however
 * many rows it has, and what is drawn later is marked as well.
 */
export function markUnit(unit: string | null): void {
  if (unit === marked) return;
  marked = unit;
  if (sheet === null) {
    sheet = new CSSStyleSheet();
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }
  sheet.replaceSync(unit === null ? '' : markRules(unit));
}

/** The unit that something of the page is about: its row of a table or its place in a picture; null for none. */
export function unitAt(target: EventTarget | null): string | null {
  if (!(target instanceof Element)) return null;
  const about = target.closest('[data-unit], [data-pick]');
  return about?.getAttribute('data-unit') ?? about?.getAttribute('data-pick') ?? null;
}
