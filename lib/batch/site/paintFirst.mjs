import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fillFirstView, firstViewNames } from '../../../app/fleet/fillFirstView.mjs';
import { loadWhenWanted } from '../../../app/fleet/loadWhenWanted.mjs';

/** Where the build leaves the answer to be put into the page, see app/fleet/firstPaint.ts. */
export const firstPaintName = 'first.json';

/** Scripts that the framework would have run while the page is being drawn. */
const eager = /<script src="([^"]+)" async=""><\/script>/g;
const preloads = /<link rel="preload" as="script"[^>]*\/>/g;
const slot = /(<div [^>]*data-first="source"[^>]*>)(?:<script>[\s\S]*?<\/i>)?(<\/div>)/;
const styles = /<link rel="stylesheet" href="([^"]+)"/g;

/**
 * Puts the answer of the fleet that comes with the site into its Fleet page, in place of an earlier one, with the script that
 * shows it before the framework is loaded, and has the framework wait for that; the answer then lies nowhere else. A page
 * without the slot for it, or a fleet without an answer, stays as it is.
 */
export function paintFirst(root) {
  const [page, answer] = [join(root, 'index.html'), join(root, 'demo', firstPaintName)];
  if (!existsSync(answer)) return;
  const made = asData(JSON.parse(readFileSync(answer, 'utf8')));
  // A function, since the signs of a replacement mean nothing in an answer.
  const filled = readFileSync(page, 'utf8').replace(
    slot,
    (_, start, end) => start + fill + made + show + drawn + end,
  );
  writeFileSync(page, filled.includes(early) ? filled : readyToPaint(filled));
  rmSync(answer);
}

/**
 * The page so that nothing stands between its text and its first picture: style sheets are asked for before anything waits
 * for them, the browser fetches its memory meanwhile, nothing is drawn before the view is filled (an empty one would cost a
 * layout), and no script is loaded beside it.
 */
function readyToPaint(html) {
  const sheets = [...html.matchAll(styles)].map(
    ([, href]) => `<link rel="preload" as="style" href="${href}"/>`,
  );
  return html
    .replace(preloads, '')
    .replace(eager, '<link data-run="" href="$1"/>')
    .replace('<link rel="stylesheet"', () => `${sheets.join('')}${early}<link rel="stylesheet"`);
}

const drawnId = 'first-view-filled';
const early = `<script>try{localStorage.getItem(${JSON.stringify(firstViewNames.lastPicture)})}catch{}</script><link rel="expect" blocking="render" href="#${drawnId}"/>`;
const fill = `<script>(globalThis.fillFirstView=${fillFirstView})(${JSON.stringify(firstViewNames)})</script>`;
const show = `<script>fillFirstView(${JSON.stringify(firstViewNames)});(${loadWhenWanted})()</script>`;
const drawn = `<i id="${drawnId}"></i>`;

/** Data that a page carries as text: no sign in it ends the element that it lies in. */
function asData(answer) {
  return `<script type="application/json" data-first="made">${JSON.stringify(answer).replaceAll('<', '\\u003c')}</script>`;
}
