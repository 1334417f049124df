import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acknowledgement } from '../../../lib/records/decisions/acknowledgements';
import type { Decision, JournalEntry } from '../../../lib/records/decisions/Decision';
import { decisionsInForce, withDecisions, withTakenBack } from '../../../lib/records/decisions/journal';
import { withUndone } from '../../../lib/records/decisions/steps';
import { journalConflicts, mergeJournals, type Side } from '../../../lib/records/workspace/mergeJournals';

const noted = (unit: string, remark: string): Decision =>
  acknowledgement({ source: 'own', unit, series: 'runout', upTo: '2020-01-01', remark });
const idOf = (unit: string) => noted(unit, '').id;

interface Act {
  readonly unit: string;
  /** Null: what is in force is taken back. */
  readonly remark: string | null;
  readonly minute: number;
}

const units = ['A', 'B', 'C', 'D'];
const act = fc.record({
  unit: fc.constantFrom(...units),
  remark: fc.option(fc.constantFrom('x', 'y', 'z')),
  minute: fc.nat(99),
});
const acts = fc.array(act, { maxLength: 7 });

/** A journal gone on with; times of two people interleave, and no person decides twice at one time. */
function goneOn(journal: readonly JournalEntry[], more: readonly Act[], by: string): readonly JournalEntry[] {
  return more.reduce((now, { unit, remark, minute }, index) => {
    const at = `2026-01-0${by === '' ? 1 : 2}T${String(minute).padStart(3, '0')}:${index}`;
    return remark === null
      ? withTakenBack(now, [idOf(unit)], { at, by })
      : withDecisions(now, [noted(unit, remark)], { at, by });
  }, journal);
}

const byMinute = (one: readonly Act[]) => [...one].sort((a, b) => a.minute - b.minute);

function remarks(journal: readonly JournalEntry[]): ReadonlyMap<string, string> {
  return new Map(
    decisionsInForce(journal).flatMap((one) =>
      one.kind === 'acknowledgement' ? [[one.unit, one.remark]] : [],
    ),
  );
}

const text = ({ at, by, act: what, decision }: JournalEntry) => JSON.stringify([at, by, what, decision]);
const later = { at: '2026-02-01T00:00:00.000Z', by: 'AB' };

const forked = fc
  .record({ base: acts, ours: acts, theirs: acts, choices: fc.infiniteStream(fc.boolean()) })
  .map(({ base, ours, theirs, choices }) => {
    const common = goneOn([], byMinute(base), '');
    return {
      common,
      ours: goneOn(common, byMinute(ours), 'AB'),
      theirs: goneOn(common, byMinute(theirs), 'CD'),
      choices,
    };
  });

describe('two journals that went on from one', () => {
  it('merge into one that holds what each alone changed, and the choice where both did', () => {
    let conflictsSeen = 0;
    fc.assert(
      fc.property(forked, ({ common, ours, theirs, choices }) => {
        const moved = (journal: readonly JournalEntry[]) =>
          new Set(journal.slice(common.length).map(({ decision }) => decision.id));
        const [byUs, byThem] = [moved(ours), moved(theirs)];
        const chosen = new Map<string, Side>(
          units.map((unit) => [idOf(unit), choices.next().value === true ? 'ours' : 'theirs']),
        );
        const merged = remarks(mergeJournals(ours, theirs, chosen, later));
        const conflicts = new Set(journalConflicts(ours, theirs).map(({ id }) => id));
        for (const unit of units) {
          const id = idOf(unit);
          const [here, there] = [remarks(ours).get(unit), remarks(theirs).get(unit)];
          const isBoth = byUs.has(id) && byThem.has(id);
          expect(conflicts.has(id)).toBe(isBoth && here !== there);
          if (conflicts.has(id)) conflictsSeen++;
          const side = isBoth ? chosen.get(id) : byThem.has(id) ? 'theirs' : 'ours';
          expect(merged.get(unit)).toBe(side === 'theirs' ? there : here);
        }
      }),
      { numRuns: 400 },
    );
    expect(conflictsSeen).toBeGreaterThan(50);
  });

  it('lose no entry, write none twice, and stand in order with what held before each', () => {
    fc.assert(
      fc.property(forked, ({ ours, theirs }) => {
        const merged = mergeJournals(ours, theirs, new Map(), later);
        const written = merged.filter(({ at }) => at !== later.at).map(text);
        expect([...written].sort()).toEqual([...new Set([...ours, ...theirs].map(text))].sort());
        merged.forEach(({ number, decision, before, step }, index) => {
          expect(number).toBe(index + 1);
          const held = decisionsInForce(merged.slice(0, index)).find(({ id }) => id === decision.id);
          expect(before).toEqual(held ?? null);
          expect(step).toBeLessThanOrEqual(number);
        });
      }),
      { numRuns: 300 },
    );
  });

  it('change nothing if one has only what the other has', () => {
    fc.assert(
      fc.property(forked, ({ common, ours }) => {
        expect(mergeJournals(ours, ours, new Map(), later)).toEqual(ours);
        expect(mergeJournals(ours, common, new Map(), later)).toEqual(ours);
        expect(mergeJournals(common, ours, new Map(), later)).toEqual(ours);
        expect(journalConflicts(common, ours)).toEqual([]);
      }),
    );
  });

  it('and that were merged before are asked about nothing again', () => {
    fc.assert(
      fc.property(forked, ({ ours, theirs, choices }) => {
        const chosen = new Map<string, Side>(
          units.map((unit) => [idOf(unit), choices.next().value === true ? 'ours' : 'theirs']),
        );
        const merged = mergeJournals(ours, theirs, chosen, later);
        for (const known of [ours, theirs]) {
          expect(journalConflicts(merged, known)).toEqual([]);
          expect(remarks(mergeJournals(known, merged, new Map(), later))).toEqual(remarks(merged));
        }
      }),
      { numRuns: 200 },
    );
  });

  it('are asked about who, when and what, and the later decision is the one to begin with', () => {
    const ours = withDecisions([], [noted('A', 'x'), noted('B', 'x')], { at: '2026-01-02', by: 'AB' });
    const theirs = withDecisions([], [noted('A', 'y'), noted('B', 'x')], { at: '2026-01-03', by: 'CD' });
    const [conflict, ...others] = journalConflicts(ours, theirs);
    expect(others).toEqual([]);
    expect(conflict).toMatchObject({
      id: idOf('A'),
      ours: { by: 'AB', decision: { remark: 'x' } },
      theirs: { by: 'CD', at: '2026-01-03', decision: { remark: 'y' } },
      later: 'theirs',
    });
    expect(remarks(mergeJournals(ours, theirs, new Map(), later)).get('A')).toBe('y');
    const kept = mergeJournals(ours, theirs, new Map([[idOf('A'), 'ours']]), later);
    expect(remarks(kept).get('A')).toBe('x');
    expect(kept.at(-1)).toMatchObject({ ...later, act: 'decided', before: { remark: 'y' } });
  });

  it('keep which entries undid which step', () => {
    const ours = withDecisions([], [noted('A', 'x')], { at: '2026-01-02', by: 'AB' });
    const decided = withDecisions([], [noted('B', 'y')], { at: '2026-01-01', by: 'CD' });
    const theirs = withUndone(withDecisions(decided, [noted('C', 'z')], { at: '2026-01-03', by: 'CD' }), 2, {
      at: '2026-01-04',
      by: 'CD',
    });
    const merged = mergeJournals(ours, theirs, new Map(), later);
    expect(merged.map(({ by, step, undoes }) => [by, step, undoes])).toEqual([
      ['CD', 1, undefined],
      ['AB', 2, undefined],
      ['CD', 3, undefined],
      ['CD', 4, 3],
    ]);
  });
});
