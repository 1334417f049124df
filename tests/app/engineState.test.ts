import { describe, expect, test } from 'vitest';
import {
  type EngineState,
  engineState,
  initialState,
  isOfLastTime,
  mayAdd,
} from '../../app/engine/engineState';
import type { OpenOutcome } from '../../lib/analysis/engine/EngineApi';
import { fleet, question } from './fixture';

const open = engineState(initialState, {
  type: 'finished',
  outcome: { ok: true, fleet: fleet(), message: null },
});

const problem = { file: 'a.csv', row: 2, column: '', raw: '', reason: 'waits', action: 'held' } as const;

function failure(message: string, changes: Partial<OpenOutcome & { ok: false }> = {}): OpenOutcome {
  return {
    ok: false,
    message,
    files: [],
    problems: [],
    problemsFound: 0,
    questions: [],
    sheets: [],
    ...changes,
  };
}

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
      outcome: failure('No reading can be used.'),
    });
    expect(failed.fleet).toBe(open.fleet);
    expect(failed.outcome).toMatchObject({ ok: false, message: 'No reading can be used.' });
  });

  test('questions of a failed attempt stay in sight while they are answered, and when that is stopped', () => {
    const failed = engineState(open, {
      type: 'finished',
      outcome: failure('All waits.', { problems: [problem], problemsFound: 1, questions: [question()] }),
    });
    expect(failed.attempt).toMatchObject({ problemsFound: 1, questions: [{ cellsWaiting: 12 }] });
    const answering = engineState(failed, { type: 'started', label: 'Again', behind: false, again: true });
    expect(answering.attempt).toBe(failed.attempt);
    const halted = engineState(answering, { type: 'finished', outcome: failure('Stopped.') });
    expect(halted.attempt).toBe(failed.attempt);
    const opened = { ok: true, fleet: fleet(), message: null } as const;
    expect(engineState(answering, { type: 'finished', outcome: opened }).attempt).toBeNull();
    expect(
      engineState(failed, { type: 'started', label: 'Opening', behind: false, again: false }).attempt,
    ).toBeNull();
    expect(engineState(answering, { type: 'failed', message: 'stopped' }).attempt).toBeNull();
  });

  test('a dead worker takes with it what was open', () => {
    const dead = engineState(open, { type: 'failed', message: 'stopped' });
    expect(dead).toMatchObject({ fleet: null, work: null, outcome: { ok: false, message: 'stopped' } });
  });

  test('progress ends a stall, waiting on hides it', () => {
    const run = (...actions: Parameters<typeof engineState>[1][]): EngineState =>
      actions.reduce(
        engineState,
        engineState(open, { type: 'started', label: 'Reading', behind: false, again: false }),
      );
    expect(run({ type: 'stalled' }).work?.stalled).toBe(true);
    expect(run({ type: 'stalled' }, { type: 'waitedOn' }).work?.stalled).toBe(false);
    const progressed = run({ type: 'stalled' }, { type: 'progressed' });
    expect(progressed.work).toMatchObject({ stalled: false, alive: true });
    expect(engineState(progressed, { type: 'progressed' })).toBe(progressed);
    expect(run({ type: 'cancelling' }).work?.cancelling).toBe(true);
  });

  test('news of work that has ended changes nothing', () => {
    for (const type of ['stalled', 'waitedOn', 'cancelling'] as const)
      expect(engineState(open, { type })).toBe(open);
    expect(engineState(open, { type: 'progressed' })).toBe(open);
  });

  test('an answer of last time is shown until its records are open, and goes if they cannot be opened', () => {
    const [shown, computed] = [fleet(), fleet()];
    const remembered = engineState(initialState, { type: 'remembered', fleet: shown });
    const outcome = { ok: true, fleet: computed, message: null } as const;
    const finished = engineState(remembered, { type: 'finished', outcome });
    expect([remembered, finished].map(isOfLastTime)).toEqual([true, false]);
    expect([remembered.fleet, finished.fleet, finished.before]).toEqual([shown, computed, shown]);
    expect(engineState(finished, { type: 'remembered', fleet: shown }).fleet).toBe(computed);
    expect(engineState(remembered, { type: 'finished', outcome: failure('Stopped.') }).fleet).toBeNull();
  });

  test('files may be added while a demo fleet is computed again, and not while own files are', () => {
    const demo = engineState(initialState, { type: 'remembered', fleet: fleet({ source: 'demo' }) });
    const own = engineState(initialState, { type: 'remembered', fleet: fleet({ source: 'own' }) });
    expect([initialState, demo, own, open].map(mayAdd)).toEqual([false, true, false, true]);
  });
});
