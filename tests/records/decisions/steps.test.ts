import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acknowledgement } from '../../../lib/records/decisions/acknowledgements';
import type { Decision, JournalEntry } from '../../../lib/records/decisions/Decision';
import { journalEntrySchema } from '../../../lib/records/decisions/Decision';
import { decisionsInForce, withDecisions, withTakenBack } from '../../../lib/records/decisions/journal';
import { redoable, undoable, withRedone, withUndone } from '../../../lib/records/decisions/steps';
import { answerDecision as answer } from '../../support/answerDecision';

const signature = { at: '2026-03-01T08:00:00.000Z', by: 'AB' };
const noted = (source: 'own' | 'demo') =>
  acknowledgement({ source, unit: 'W-1', series: 'runout', upTo: '2024-01-01', remark: 'seen' });

type Journal = readonly JournalEntry[];
const undo = (journal: Journal, source: 'own' | 'demo' = 'own') =>
  withUndone(journal, undoable(journal, source)?.number ?? 0, signature);
const redo = (journal: Journal, source: 'own' | 'demo' = 'own') =>
  withRedone(journal, redoable(journal, source)?.number ?? 0, signature);

describe('undo and redo', () => {
  test('what was decided at once is undone at once, as entries that say so', () => {
    const first = withDecisions([], [answer('q1', 'mm'), answer('q2', 'um')], signature);
    const journal = withDecisions(first, [answer('q1', 'in'), answer('q3', 'yes')], signature);
    expect(undoable(journal, 'own')?.entries.map(({ number }) => number)).toEqual([3, 4]);
    const undone = undo(journal);
    expect(undone.slice(4)).toEqual([
      {
        number: 5,
        ...signature,
        act: 'taken back',
        decision: answer('q3', 'yes'),
        before: answer('q3', 'yes'),
        step: 5,
        undoes: 3,
      },
      {
        number: 6,
        ...signature,
        act: 'decided',
        decision: answer('q1', 'mm'),
        before: answer('q1', 'in'),
        step: 5,
        undoes: 3,
      },
    ]);
    expect(decisionsInForce(undone)).toEqual(decisionsInForce(first));
    expect(decisionsInForce(redo(undone))).toEqual(decisionsInForce(journal));
  });

  test('after a new decision there is nothing to redo', () => {
    const undone = undo(withDecisions([], [answer('q1', 'mm')], signature));
    expect(redoable(undone, 'own')?.number).toBe(1);
    expect(redoable(withDecisions(undone, [answer('q2', 'mm')], signature), 'own')).toBeNull();
  });

  test('a step that is not the next one is left alone', () => {
    const journal = withDecisions(
      withDecisions([], [answer('q1', 'mm')], signature),
      [answer('q2', 'mm')],
      signature,
    );
    expect(withUndone(journal, 1, signature)).toBe(journal);
    expect(withRedone(journal, 2, signature)).toBe(journal);
  });

  test('the demo fleet and the own files are undone apart', () => {
    const journal = withDecisions(withDecisions([], [noted('demo')], signature), [noted('own')], signature);
    expect(decisionsInForce(undo(journal, 'demo'))).toEqual([noted('own')]);
    expect(decisionsInForce(redo(undo(journal, 'demo'), 'demo'))).toEqual(decisionsInForce(journal));
    expect(decisionsInForce(undo(journal, 'own'))).toEqual([noted('demo')]);
  });

  test('a journal of an earlier version is read, and what was written at one time is one step', () => {
    const old = [
      ['2026-03-01T08:00:00.000Z', answer('q1', 'mm')],
      ['2026-03-01T08:00:00.000Z', answer('q2', 'mm')],
      ['2026-03-02T08:00:00.000Z', answer('q3', 'mm')],
    ].map(([at, decision], index) =>
      journalEntrySchema.parse({ number: index + 1, at, by: '', act: 'decided', decision, before: null }),
    );
    const once = undo(old);
    expect(decisionsInForce(once)).toEqual([answer('q1', 'mm'), answer('q2', 'mm')]);
    expect(decisionsInForce(undo(once))).toEqual([]);
    expect(decisionsInForce(redo(redo(undo(once))))).toEqual(decisionsInForce(old));
  });

  test('what only says that it undoes a step counts as a step, so that undoing never comes to a stop', () => {
    const [first] = withDecisions([], [answer('q1', 'mm')], signature) as [JournalEntry];
    const [, other] = withDecisions([first], [answer('q1', 'in')], signature) as [JournalEntry, JournalEntry];
    const merged = [first, { ...other, undoes: 1 }];
    expect(decisionsInForce(undo(merged))).toEqual([answer('q1', 'mm')]);
    expect(decisionsInForce(undo(undo(merged)))).toEqual([]);
  });
});

const ids = ['q1', 'q2', 'q3', 'q4'];
const command = fc.oneof(
  fc.record({
    what: fc.constant('decide' as const),
    answers: fc.array(fc.tuple(fc.constantFrom(...ids), fc.constantFrom('mm', 'um', 'in')), {
      minLength: 1,
      maxLength: 4,
    }),
  }),
  fc.record({ what: fc.constant('take back' as const), ids: fc.subarray(ids, { minLength: 1 }) }),
  fc.record({ what: fc.constant('undo' as const) }),
  fc.record({ what: fc.constant('redo' as const) }),
);

test('after any decisions, undos and redos the journal holds what a stack of states holds, order included', () => {
  fc.assert(
    fc.property(fc.array(command, { maxLength: 25 }), (commands) => {
      let journal: Journal = [];
      // The same kept simply: every state there was, and the place in them.
      let states: (readonly Decision[])[] = [[]];
      let place = 0;
      for (const one of commands) {
        const before = journal;
        if (one.what === 'undo') {
          journal = undo(journal);
          place = Math.max(0, place - 1);
        } else if (one.what === 'redo') {
          journal = redo(journal);
          place = Math.min(states.length - 1, place + 1);
        } else {
          journal =
            one.what === 'decide'
              ? withDecisions(
                  journal,
                  one.answers.map(([id, text]) => answer(id, text)),
                  signature,
                )
              : withTakenBack(journal, one.ids, signature);
          if (journal.length > before.length) {
            states = [...states.slice(0, place + 1), decisionsInForce(journal)];
            place++;
          }
        }
        expect(decisionsInForce(journal)).toEqual(states[place]);
        expect(journal.slice(0, before.length)).toEqual(before);
        expect(undoable(journal, 'own') === null).toBe(place === 0);
        expect(redoable(journal, 'own') === null).toBe(place === states.length - 1);
      }
      expect(journal.map(({ number }) => number)).toEqual(journal.map((_, index) => index + 1));
    }),
    { numRuns: 300 },
  );
});
