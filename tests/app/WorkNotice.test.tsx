// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Engine } from '../../app/engine/EngineProvider';
import { initialState, type Work } from '../../app/engine/engineState';
import { ProgressContext } from '../../app/engine/useProgress';
import { saidEvery_ms, WorkNotice } from '../../app/frame/WorkNotice';

const work: Work = {
  label: 'Reading 3 files',
  behind: false,
  alive: true,
  stalled: false,
  cancelling: false,
};
const engine = { state: { ...initialState, work }, cancel: () => {} } as unknown as Engine;

let root: Root;
let box: HTMLElement;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
});
afterEach(() => {
  act(() => root.unmount());
  box.remove();
  vi.useRealTimers();
});

const show = (step: string, share: number) =>
  act(() =>
    root.render(
      <ProgressContext value={{ step, share }}>
        <WorkNotice work={work} engine={engine} />
      </ProgressContext>,
    ),
  );
const said = () => box.querySelector('[role=status]')?.textContent;
const seen = () => box.querySelector('p[aria-hidden=true]')?.textContent;

test('every step is seen, and one in a while is said', () => {
  show('fitting 1 of 60', 0.1);
  const heard = new Set([said()]);
  for (let fit = 2; fit <= 40; fit++) {
    show(`fitting ${fit} of 60`, 0.1 + fit / 100);
    expect(seen()).toBe(`Reading 3 files: fitting ${fit} of 60.`);
    heard.add(said());
  }
  expect([...heard]).toEqual(['Reading 3 files: fitting 1 of 60.']);
  act(() => vi.advanceTimersByTime(saidEvery_ms));
  expect(said()).toBe('Reading 3 files: fitting 40 of 60.');
  expect(box.querySelector('progress')?.value).toBeCloseTo(0.5, 6);
});
