import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fillFirstView, firstViewNames } from '../../../app/fleet/fillFirstView.mjs';
import { loadWhenWanted } from '../../../app/fleet/loadWhenWanted.mjs';

/** Where the build leaves the answer to be put into the page, see app/fleet/firstPaint.ts. */
export const firstPaintName = 'first.json';

/** Scripts that the framework would have run while the page is being drawn. */
const eager = /<script src="([^"]+)" async=""><\/script>/g;
const slot = /(<div [^>]*data-first="source"[^>]*>)(?:<template [\s\S]*?<\/script>)?(<\/div>)/;

/**
 * Puts the answer of the fleet that comes with the site into its Fleet page, in place of an earlier one, with the script that
 * shows it before the framework is loaded, and has the framework wait for that; the answer then lies nowhere else. A page without the slot for it, or a fleet without an answer, stays as it is.
 */
export function paintFirst(root) {
  const [page, answer] = [join(root, 'index.html'), join(root, 'demo', firstPaintName)];
  if (!existsSync(answer)) return;
  const made = madeTemplate(JSON.parse(readFileSync(answer, 'utf8')));
  // A function, since the signs of a replacement mean nothing in an answer.
  const filled = readFileSync(page, 'utf8')
    .replace(slot, (_, start, end) => start + made + script + end)
    .replace(eager, '<link rel="preload" as="script" fetchpriority="low" data-run="" href="$1"/>');
  writeFileSync(page, filled);
  rmSync(answer);
}

const script = `<script>(${fillFirstView})(${JSON.stringify(firstViewNames)});(${loadWhenWanted})()</script>`;

function madeTemplate({ sentence, remarks, wide, narrow }) {
  const lines = remarks.map((remark) => `<li>${escaped(remark)}</li>`).join('');
  return `<template data-first="made"><p>${escaped(sentence)}</p><ul>${lines}</ul>${named('wide', wide)}${named('narrow', narrow)}</template>`;
}

/** A drawn picture is XML of our own making in which texts are escaped already; its box says what it is. */
function named(name, svg) {
  return svg.replace(' class="marks"', ` class="${name}" aria-hidden="true"`);
}

function escaped(text) {
  return text.replace(/[&<>]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;' })[sign]);
}
