// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, hydrateRoot, type Root } from 'react-dom/client';
import { renderToString } from 'react-dom/server';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { engineState, initialState } from '../../app/engine/engineState';
import { FirstView, useFleetShown } from '../../app/fleet/FirstView';
import { fillFirstView, firstViewNames } from '../../app/fleet/fillFirstView.mjs';
import {
  forgetLastPicture,
  keepLastPicture,
  lastPictureSvg,
  noteFleetShown,
  sitePictureSvg,
} from '../../app/fleet/lastPicture';
import { fleet } from './fixture';

const engine = vi.hoisted(() => ({ state: {} as unknown }));
vi.mock('../../app/engine/EngineProvider', () => ({ useEngine: () => engine }));

const picture = {
  sentence: '3 of 40 units reach a limit.',
  remarks: ['1 unit has no plan.', '2 units have <b>no</b> limit.'],
  svg: '<svg xmlns="http://www.w3.org/2000/svg" width="40"><text>U-1</text></svg>',
};
const made = `<script type="application/json" data-first="made">${JSON.stringify({
  sentence: '9 of 52 units.',
  remarks: ['One <b>remark</b>.'],
  wide: '<svg xmlns="http://www.w3.org/2000/svg" id="wide"><text>W-1</text></svg>',
  narrow: '<svg xmlns="http://www.w3.org/2000/svg"><text>N-1</text></svg>',
}).replaceAll('<', '\\u003c')}</script>`;

let root: Root;
let box: HTMLElement;
beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  localStorage.clear();
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
});
afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

function Follower() {
  useFleetShown();
  return null;
}

/** What is left of the last picture when the page has seen a state. */
function after(state: unknown) {
  engine.state = state;
  act(() => root.render(<Follower />));
  return lastPictureSvg();
}

/** The page as the site sends it, its own script run, then taken over by the framework. */
function pageOfSite() {
  act(() => root.unmount());
  box.remove();
  box = document.body.appendChild(document.createElement('div'));
  box.innerHTML = renderToString(<FirstView />).replace(
    /(data-first="source"[^>]*>)/,
    (start) => start + made,
  );
  fillFirstView(firstViewNames);
  const before = box.innerHTML;
  const mismatches: unknown[] = [];
  act(() => {
    root = hydrateRoot(box, <FirstView />, { onRecoverableError: (error) => mismatches.push(error) });
  });
  return { before, mismatches };
}

const words = (selector: string) => [...box.querySelectorAll(selector)].map(({ textContent }) => textContent);
const shown = () => box.querySelector<HTMLElement>('[data-first="view"]')?.dataset.firstShown ?? 'nothing';

const outcome = (source: 'demo' | 'own') =>
  ({ type: 'finished', outcome: { ok: true, fleet: fleet({ source }), message: null } }) as const;

test('what was shown last is there before anything is opened, as text and as a picture that runs nothing', () => {
  keepLastPicture(picture);
  act(() => root.render(<FirstView />));
  expect(words('.answer')).toEqual([`${picture.sentence} (As shown last; being opened.)`]);
  expect(words('.remarks li')).toEqual(picture.remarks);
  expect(box.querySelector<HTMLImageElement>('[data-first="picture"] img')?.src).toMatch(/^blob:/);
  expect(shown()).toBe('own');
});

test('a first visit sees the answer that the page carries, and the framework leaves it as it is', () => {
  const { before, mismatches } = pageOfSite();
  expect(words('.answer')).toEqual(['9 of 52 units.']);
  expect(words('.remarks li')).toEqual(['One <b>remark</b>.']);
  expect(words('[data-first="picture"] text')).toEqual(['W-1']);
  expect(shown()).toBe('site');
  expect(sitePictureSvg()).toMatch(/<svg [^>]*id="wide"[\s\S]*W-1/);
  expect(box.innerHTML).toBe(before);
  expect(mismatches).toEqual([]);
});

test('own files never begin with the fleet of the site: with their picture, or with none', () => {
  noteFleetShown('own');
  pageOfSite();
  expect([shown(), words('.answer')[0]]).toEqual(['nothing', expect.stringContaining('being opened')]);
  expect(sitePictureSvg()).toBeNull();
  keepLastPicture(picture);
  pageOfSite();
  expect([shown(), words('.answer')[0]]).toEqual(['own', expect.stringContaining(picture.sentence)]);
});

test('what was kept and cannot be read leaves the answer of the page in place', () => {
  for (const kept of ['torn {', '7', '{"sentence":1}', '{"sentence":"","svg":""}']) {
    localStorage.setItem(firstViewNames.lastPicture, kept);
    pageOfSite();
    expect([kept, shown()]).toEqual([kept, 'site']);
  }
});

test('it stays while the same files are opened again, and goes with other data', () => {
  keepLastPicture(picture);
  const remembered = engineState(initialState, { type: 'remembered', fleet: fleet({ source: 'own' }) });
  expect(after(initialState)).toEqual(picture.svg);
  expect(after(remembered)).toEqual(picture.svg);
  const again = engineState(remembered, outcome('own'));
  expect(after(again)).toEqual(picture.svg);
  expect(after(engineState(again, outcome('own')))).toBeNull();
  expect(localStorage.getItem(firstViewNames.fleetShown)).toBe('own');
  keepLastPicture(picture);
  expect(after(engineState(remembered, outcome('demo')))).toBeNull();
  expect(localStorage.getItem(firstViewNames.fleetShown)).toBe('demo');
});

test('a browser that refuses keeps nothing and fails at nothing', () => {
  const refuse = () => {
    throw new DOMException('refused', 'QuotaExceededError');
  };
  const refused = vi.spyOn(Storage.prototype, 'setItem').mockImplementation(refuse);
  keepLastPicture(picture);
  forgetLastPicture();
  refused.mockRestore();
  expect(lastPictureSvg()).toBeNull();
});
