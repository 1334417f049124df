// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, test, vi } from 'vitest';
import { EngineFailure } from '../../app/engine/engineClient';
import { initialState } from '../../app/engine/engineState';
import { useAsked } from '../../app/engine/useAsked';
import { WithAnswer } from '../../app/engine/WithAnswer';
import { accessFaults } from './accessFaults';
import { fleet } from './fixture';
import { mounted } from './mounted';

const engine = vi.hoisted(() => ({ current: {} as unknown }));
vi.mock('../../app/engine/EngineProvider', () => ({ useEngine: () => engine.current }));

const open = fleet();

function Asking() {
  const asked = useAsked(open, 'unit', 'L-1107');
  return <WithAnswer asked={asked}>{() => <p>answered</p>}</WithAnswer>;
}

const now = mounted('main');

async function show(ask: () => Promise<unknown>, start = vi.fn()) {
  engine.current = { state: { ...initialState, work: null, fleet: open }, request: { ask }, start };
  await act(async () => now.root.render(<Asking />));
  await act(async () => {});
}
const tryAgain = () =>
  act(async () => {
    now.box.querySelector('button')?.click();
  });

describe('a question that cannot be answered', () => {
  test('is told with its cause, and asked again on the spot', async () => {
    let answers = 0;
    await show(async () => {
      answers += 1;
      if (answers === 1) throw new Error('demo/answers.json.gz could not be loaded');
      return {};
    });
    expect(now.box.querySelector('[role=alert] p')?.textContent).toBe(
      'This could not be computed: demo/answers.json.gz could not be loaded.',
    );
    expect(await accessFaults(now.box)).toEqual([]);
    await tryAgain();
    expect(answers).toBe(2);
    expect(now.box.textContent).toBe('answered');
  });

  test('has the data opened again where the worker is gone: asking it once more would be in vain', async () => {
    const start = vi.fn();
    const ask = vi.fn(async () => {
      throw new EngineFailure('The computing part of this page stopped.');
    });
    await show(ask, start);
    await tryAgain();
    expect(start).toHaveBeenCalledExactlyOnceWith('open');
    expect(ask).toHaveBeenCalledTimes(1);
  });
});
