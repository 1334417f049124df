// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { engineState, initialState } from '../../app/engine/engineState';
import { LastPictureView, useLastPicture } from '../../app/fleet/LastPictureView';
import { forgetLastPicture, keepLastPicture, lastPicture } from '../../app/fleet/lastPicture';
import { fleet } from './fixture';

const engine = vi.hoisted(() => ({ state: {} as unknown }));
vi.mock('../../app/engine/EngineProvider', () => ({ useEngine: () => engine }));

const picture = {
  sentence: '3 of 40 units reach a limit.',
  svg: '<svg xmlns="http://www.w3.org/2000/svg" width="40"><text>U-1</text></svg>',
};

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
  useLastPicture();
  return null;
}

/** What is left of the last picture when the page has seen a state. */
function after(state: unknown) {
  engine.state = state;
  act(() => root.render(<Follower />));
  return lastPicture();
}

const outcome = (source: 'demo' | 'own') =>
  ({ type: 'finished', outcome: { ok: true, fleet: fleet({ source }), message: null } }) as const;

test('what was shown last is there before anything is opened', () => {
  keepLastPicture(picture);
  act(() => root.render(<LastPictureView />));
  expect(box.querySelector('.answer')?.textContent).toBe(picture.sentence);
  expect(box.querySelector('svg text')?.textContent).toBe('U-1');
});

test('where nothing was shown, or what was kept cannot be read, the page says that it opens the data', () => {
  for (const kept of [null, 'torn {', '7', '{"sentence":1}']) {
    if (kept !== null) localStorage.setItem('endfloat last picture', kept);
    expect(lastPicture()).toBeNull();
  }
  act(() => root.render(<LastPictureView />));
  expect(box.textContent).toContain('being opened');
});

test('it stays while the same files are opened again, and goes with other data', () => {
  keepLastPicture(picture);
  const remembered = engineState(initialState, { type: 'remembered', fleet: fleet({ source: 'own' }) });
  expect(after(initialState)).toEqual(picture);
  expect(after(remembered)).toEqual(picture);
  const again = engineState(remembered, outcome('own'));
  expect(after(again)).toEqual(picture);
  expect(after(engineState(again, outcome('own')))).toBeNull();
  keepLastPicture(picture);
  expect(after(engineState(remembered, outcome('demo')))).toBeNull();
});

test('a browser that refuses keeps nothing and fails at nothing', () => {
  const refuse = () => {
    throw new DOMException('refused', 'QuotaExceededError');
  };
  const refused = vi.spyOn(Storage.prototype, 'setItem').mockImplementation(refuse);
  keepLastPicture(picture);
  forgetLastPicture();
  refused.mockRestore();
  expect(lastPicture()).toBeNull();
});
