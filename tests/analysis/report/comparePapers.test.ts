import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparePapers } from '../../../lib/analysis/report/comparePapers';
import type { PaperChange, PaperSummary, UnitOnPaper } from '../../../lib/analysis/report/types';
import { finding, order, summary, unitOnPaper } from './madePapers';

const range = ['2027-01-01', '2027-07-01', '2028-01-01'] as const;

function named(changes: readonly PaperChange[]): readonly string[] {
  return changes.map((change) =>
    [
      change.about,
      change.way,
      change.about === 'order' ? change.part : change.unit,
      ...(change.about === 'signal' ? [change.series] : []),
    ].join(' '),
  );
}

describe('two papers compared', () => {
  it('name what is on one of them only, in order of kind and name, new before gone', () => {
    const before = summary('2024-10-21', {
      units: [
        unitOnPaper('A', range, { cannotWait: true, chanceAtNextOverhaul: 0.4 }),
        unitOnPaper('B', range),
        unitOnPaper('C', range, { cannotWait: true }),
        unitOnPaper('Z', range, { cannotWait: true }),
      ],
      findings: [finding('A', 'runout'), finding('B', 'thrust_play')],
      ordersDue: [order('TB'), order('GS')],
    });
    const after = summary('2026-10-21', {
      units: [
        unitOnPaper('A', range),
        unitOnPaper('B', range, { cannotWait: true, chanceAtNextOverhaul: 0.7 }),
        unitOnPaper('C', range, { cannotWait: true }),
      ],
      findings: [finding('B', 'thrust_play'), finding('B', 'runout')],
      ordersDue: [order('RS'), order('GS', { quantity: 9 })],
    });
    const changes = comparePapers(before, after);
    expect(named(changes)).toEqual([
      'cannot wait new B',
      'cannot wait gone A',
      'cannot wait gone Z',
      'signal new B runout',
      'signal gone A runout',
      'order new RS',
      'order gone TB',
    ]);
    // A unit that can wait still has its state on both papers; one that left the scope has none on the later one.
    expect(changes[1]).toMatchObject({ before: { chanceAtNextOverhaul: 0.4 }, after: { unit: 'A' } });
    expect(changes[2]).toMatchObject({ before: { unit: 'Z' }, after: null });
  });

  it.each<[string, UnitOnPaper['met'] extends infer _ ? readonly (string | null)[] : never, boolean]>([
    ['within the range', ['2027-02-01', '2027-09-01', '2028-03-01'], false],
    ['after the range, its own range apart from it', ['2028-03-01', '2028-09-01', '2029-03-01'], true],
    ['before the range', ['2025-03-01', '2025-09-01', '2026-03-01'], true],
    [
      'after the range, but its own range takes in the old date',
      ['2027-06-30', '2028-02-01', '2029-03-01'],
      false,
    ],
    ['beyond the reach of a forecast', ['2029-01-01', null, null], true],
    ['beyond, with an early date before the old one', ['2027-03-01', null, null], false],
  ])('a date %s', (_, days, moved) => {
    const before = summary('2024-10-21', { units: [unitOnPaper('A', range)] });
    const [early = null, median = null, late = null] = days;
    const after = summary('2026-10-21', { units: [unitOnPaper('A', [early, median, late])] });
    expect(named(comparePapers(before, after))).toEqual(moved ? ['date moved A'] : []);
    expect(named(comparePapers(after, before))).toEqual(moved ? ['date moved A'] : []);
  });

  it('a date without a range, such as the end of a rated life, moves only by 30 days or more', () => {
    const on = (day: string) => summary('2026-10-21', { units: [unitOnPaper('A', [day, day, day])] });
    expect(named(comparePapers(on('2027-06-06'), on('2027-07-05')))).toEqual([]);
    expect(named(comparePapers(on('2027-06-06'), on('2027-07-06')))).toEqual(['date moved A']);
  });

  it('a limit that is past on both papers has no date that moves, nor has one without a date', () => {
    const past = (day: string) =>
      summary(day, { units: [unitOnPaper('A', [day, day, day], { pastNow: true })] });
    expect(named(comparePapers(past('2024-10-21'), past('2026-10-21')))).toEqual([]);
    const unknown = unitOnPaper('A', range);
    const point = { date: null, beyond: false };
    const met = {
      ...(unknown.met as NonNullable<UnitOnPaper['met']>),
      early: point,
      median: point,
      late: point,
    };
    const undated = summary('2026-10-21', { units: [{ ...unknown, met }] });
    expect(named(comparePapers(past('2024-10-21'), undated))).toEqual([]);
    expect(
      named(comparePapers(past('2024-10-21'), summary('x', { units: [{ ...unknown, met: null }] }))),
    ).toEqual([]);
  });
});

const day = fc
  .integer({ min: 0, max: 3000 })
  .map((days) => new Date(Date.UTC(2024, 0, 1 + days)).toISOString().slice(0, 10));
const days = fc
  .tuple(day, day, day, fc.integer({ min: 0, max: 3 }))
  .map(([a, b, c, beyond]): [string | null, string | null, string | null] => {
    const [early = a, median = b, late = c] = [a, b, c].sort();
    return [beyond > 2 ? null : early, beyond > 1 ? null : median, beyond > 0 ? null : late];
  });
const names = ['A', 'B', 'C', 'D', 'E'];
const units = fc
  .uniqueArray(fc.constantFrom(...names))
  .chain((list) =>
    fc.tuple(
      ...list.map((name) =>
        fc
          .tuple(days, fc.boolean(), fc.boolean(), fc.boolean())
          .map(([met, cannotWait, pastNow, none]) =>
            unitOnPaper(name, met, { cannotWait, pastNow, ...(none ? { met: null } : {}) }),
          ),
      ),
    ),
  );
const paper: fc.Arbitrary<PaperSummary> = fc
  .tuple(units, fc.uniqueArray(fc.constantFrom(...names)), fc.uniqueArray(fc.constantFrom(...names)), day)
  .map(([of, signals, parts, asOf]) =>
    summary(asOf, {
      units: of,
      findings: signals.map((unit) => finding(unit, 'runout')),
      ordersDue: parts.map((part) => order(part)),
    }),
  );

/** Changes as text in which new and gone, before and after have changed places. */
function mirrored(change: PaperChange): string {
  const way = change.way === 'new' ? 'gone' : change.way === 'gone' ? 'new' : change.way;
  return JSON.stringify({ ...change, way, before: change.after, after: change.before });
}

describe('any two papers', () => {
  it('a paper compared with itself has no change', () => {
    fc.assert(fc.property(paper, (one) => comparePapers(one, one).length === 0));
  });

  it('swapped, have new and gone, before and after exchanged', () => {
    fc.assert(
      fc.property(paper, paper, (one, other) => {
        const ordered = (change: PaperChange) => {
          const { about, way, before, after, ...rest } = change;
          return JSON.stringify({ ...rest, about, way, before, after });
        };
        const there = comparePapers(one, other).map(ordered).toSorted();
        const back = comparePapers(other, one)
          .map((change) => ordered(JSON.parse(mirrored(change)) as PaperChange))
          .toSorted();
        expect(back).toEqual(there);
      }),
    );
  });

  it('each unit, signal and part is named as new or gone exactly where it is on one paper only', () => {
    fc.assert(
      fc.property(paper, paper, (one, other) => {
        const waiting = ({ units: list }: PaperSummary) =>
          list.filter(({ cannotWait }) => cannotWait).map(({ unit }) => unit);
        const changed = comparePapers(one, other)
          .filter(({ about }) => about === 'cannot wait')
          .map((change) => `${change.way} ${'unit' in change ? change.unit : ''}`);
        const expected = names.flatMap((name) => {
          const [was, is] = [waiting(one).includes(name), waiting(other).includes(name)];
          return was === is ? [] : [`${is ? 'new' : 'gone'} ${name}`];
        });
        expect(changed.toSorted()).toEqual(expected.toSorted());
      }),
    );
  });
});
