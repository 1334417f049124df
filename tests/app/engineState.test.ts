import { describe, expect, test } from 'vitest';
import { type EngineState, engineState, initialState } from '../../app/engine/engineState';
import { fleet } from './fixture';

const open = engineState(initialState, {
  type: 'finished',
  outcome: { ok: true, fleet: fleet(), message: null },
});

describe('engineState', () => {
  test('opens, and reports a message if there is one', () => {
    expect(open).toMatchObject({ work: null, outcome: null, fleet: { asOf: '2026-11-01' } });
    const told = engineState(open, {
      type: 'finished',
      outcome: { ok: true, fleet: fleet(), message: 'Not kept.' },
    });
    expect(told.outcome).toMatchObject({ ok: true, message: 'Not kept.' });
  });

  test('a failed attempt leaves what was open, and says why', () => {
    const failed = engineState(open, {
      type: 'finished',
      outcome: { ok: false, message: 'No reading can be used.', files: [], problems: [], problemsFound: 0 },
    });
    expect(failed.fleet).toBe(open.fleet);
    expect(failed.outcome).toMatchObject({ ok: false, message: 'No reading can be used.' });
  });

  test('a dead worker takes with it what was open', () => {
    const dead = engineState(open, { type: 'failed', message: 'stopped' });
    expect(dead).toMatchObject({ fleet: null, work: null, outcome: { ok: false, message: 'stopped' } });
  });

  test('progress ends a stall, waiting on hides it', () => {
    const run = (...actions: Parameters<typeof engineState>[1][]): EngineState =>
      actions.reduce(engineState, engineState(open, { type: 'started', label: 'Reading' }));
    expect(run({ type: 'stalled' }).work?.stalled).toBe(true);
    expect(run({ type: 'stalled' }, { type: 'waitedOn' }).work?.stalled).toBe(false);
    const progressed = run(
      { type: 'stalled' },
      { type: 'progressed', progress: { step: 'Fitting', share: 0.5 } },
    );
    expect(progressed.work).toMatchObject({ stalled: false, progress: { step: 'Fitting', share: 0.5 } });
    expect(run({ type: 'cancelling' }).work?.cancelling).toBe(true);
  });

  test('news of work that has ended changes nothing', () => {
    for (const type of ['stalled', 'waitedOn', 'cancelling'] as const)
      expect(engineState(open, { type })).toBe(open);
    expect(engineState(open, { type: 'progressed', progress: { step: 'late', share: 1 } })).toBe(open);
  });
});
