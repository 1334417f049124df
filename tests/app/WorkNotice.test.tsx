// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Engine } from '../../app/engine/EngineProvider';
import { initialState, type Work } from '../../app/engine/engineState';
import { ProgressContext } from '../../app/engine/useProgress';
import { saidEvery_ms, WorkNotice } from '../../app/frame/WorkNotice';
import { mounted } from './mounted';

const work: Work = {
  label: 'Reading 3 files',
  behind: false,
  alive: true,
  stalled: false,
  cancelling: false,
};
const engine = { state: { ...initialState, work }, cancel: () => {} } as unknown as Engine;

const now = mounted();
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
});
afterEach(() => {
  vi.useRealTimers();
});

const show = (step: string, share: number) =>
  act(() =>
    now.root.render(
      <ProgressContext value={{ step, share }}>
        <WorkNotice work={work} engine={engine} />
      </ProgressContext>,
    ),
  );
const said = () => now.box.querySelector('[role=status]')?.textContent;
const seen = () => now.box.querySelector('p[aria-hidden=true]')?.textContent;

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
  expect(now.box.querySelector('progress')?.value).toBeCloseTo(0.5, 6);
});
