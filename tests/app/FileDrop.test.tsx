// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { EngineState } from '../../app/engine/engineState';
import { engineState, initialState } from '../../app/engine/engineState';
import { DropAnywhere } from '../../app/records/DropAnywhere';
import { FileDrop } from '../../app/records/FileDrop';
import { fleet } from './fixture';

const engine = vi.hoisted(() => ({ state: {} as unknown, start: vi.fn() }));
vi.mock('../../app/engine/EngineProvider', () => ({ useEngine: () => engine }));
const dropped = vi.hoisted(() => ({ files: [{ name: 'readings.csv', bytes: new ArrayBuffer(3) }] }));
vi.mock('../../app/records/droppedFiles', () => ({ droppedFiles: async () => dropped.files }));

const path = vi.hoisted(() => ({ name: '/' }));
vi.mock('next/navigation', () => ({ usePathname: () => path.name }));

let root: Root;
let box: HTMLElement;
beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  engine.start.mockClear();
  box = document.body.appendChild(document.createElement('div'));
  root = createRoot(box);
});
afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

function see(state: EngineState) {
  engine.state = state;
  act(() => root.render(<FileDrop onWorkspace={() => {}} />));
}

async function drop() {
  await act(async () => {
    box.querySelector('input')?.dispatchEvent(new Event('change', { bubbles: true }));
  });
}

const status = () => box.querySelector('[role="status"]')?.textContent;
const remembered = (source: 'demo' | 'own') =>
  engineState(initialState, { type: 'remembered', fleet: fleet({ source }) });
const finished = (state: EngineState, source: 'demo' | 'own') =>
  engineState(state, {
    type: 'finished',
    outcome: { ok: true, fleet: fleet({ source }), message: null },
  });

test('files that come while the page starts wait until it is known what they are added to', async () => {
  see(initialState);
  await drop();
  expect([status(), engine.start.mock.calls]).toEqual(['1 file taken.', []]);
  see(remembered('own'));
  expect(engine.start).not.toHaveBeenCalled();
  see(finished(remembered('own'), 'own'));
  expect(engine.start.mock.calls).toEqual([['addFiles', dropped.files]]);
  see(finished(remembered('own'), 'own'));
  expect(engine.start).toHaveBeenCalledTimes(1);
});

test('nobody waits for the demo fleet with files in hand', async () => {
  see(remembered('demo'));
  await drop();
  expect(engine.start.mock.calls).toEqual([['addFiles', dropped.files]]);
});

test('while other files are being read nothing is taken, and the page says so', async () => {
  const reading = { type: 'started', label: 'Reading', behind: false, again: false } as const;
  see(engineState(finished(remembered('own'), 'own'), reading));
  await drop();
  expect([status(), engine.start.mock.calls]).toEqual([expect.stringContaining('Wait until'), []]);
});

test('what is dropped on any other page is opened too; on Records the drop zone takes it, once', async () => {
  engine.state = finished(remembered('own'), 'own');
  act(() => root.render(<DropAnywhere />));
  const drop = new Event('drop', { bubbles: true, cancelable: true });
  await act(async () => void document.body.dispatchEvent(drop));
  expect([drop.defaultPrevented, engine.start.mock.calls]).toEqual([true, [['addFiles', dropped.files]]]);
  path.name = '/records/';
  act(() => root.render(<DropAnywhere key="records" />));
  const left = new Event('drop', { bubbles: true, cancelable: true });
  await act(async () => void document.body.dispatchEvent(left));
  expect([left.defaultPrevented, engine.start.mock.calls.length]).toEqual([false, 1]);
});
