import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDatePlus } from '../../../lib/analysis/isoDate';
import { comingOverhauls, noChanges } from '../../../lib/analysis/plan/comingOverhauls';
import type { PlanChanges, UnitPlan } from '../../../lib/analysis/plan/types';
import { asOf, type MadeUnit, madeUnitNow } from '../demand/madePlanning';

const day = (days: number) => isoDatePlus(asOf, days);
const until = day(1000);

function plan(own: Partial<MadeUnit> = {}): UnitPlan {
  const made = { unit: 'A', hoursNow: 10_000, nextOverhaulDate: day(100), run: 0, runStart_h: 0, ...own };
  return {
    unit: madeUnitNow(made),
    installed: made.installed ?? true,
    interval_h: made.interval_h === undefined ? 6_000 : made.interval_h,
    lastHours: made.lastHours ?? null,
  };
}
const coming = (own: Partial<MadeUnit> = {}, changes: Partial<PlanChanges> = {}) =>
  comingOverhauls(plan(own), asOf, until, { ...noChanges, ...changes });
const dates = (own?: Partial<MadeUnit>, changes?: Partial<PlanChanges>) =>
  coming(own, changes).overhauls.map(({ date }) => date);

describe('comingOverhauls, 24 h a day', () => {
  it('starts with the planned day and follows at the interval: 6,000 h are 250 days', () => {
    expect(coming().overhauls).toEqual([
      { date: day(100), day: 100, unitHours: 12_400, followingHours: 18_400, followingDate: day(350) },
      { date: day(350), day: 350, unitHours: 18_400, followingHours: 24_400, followingDate: day(600) },
      { date: day(600), day: 600, unitHours: 24_400, followingHours: 30_400, followingDate: day(850) },
      { date: day(850), day: 850, unitHours: 30_400, followingHours: 36_400, followingDate: day(1100) },
    ]);
    expect(coming().reason).toBeNull();
  });

  it('twice the hours a year: the same hours in half the days', () => {
    const changed = coming({}, { hoursPerYearFactor: 2 }).overhauls;
    expect(changed.slice(0, 3).map(({ date, unitHours }) => [date, unitHours])).toEqual([
      [day(50), 12_400],
      [day(175), 18_400],
      [day(300), 24_400],
    ]);
  });

  it('half the interval counts from the last overhaul, not before the day asked on', () => {
    // Opened at 9,000 h; half of the 3,400 h to the next is 1,700 h: at 10,700 h, in 29 days.
    expect(dates({ lastHours: 9_000 }, { intervalFactor: 0.5 }).slice(0, 3)).toEqual([
      day(29),
      day(154),
      day(279),
    ]);
    expect(dates({ lastHours: 2_000 }, { intervalFactor: 0.5 })[0]).toBe(asOf);
  });

  it('one overhaul moved takes its own later ones with it and nobody else’s', () => {
    expect(dates({}, { moved: { unit: 'A', date: day(40) } }).slice(0, 2)).toEqual([day(40), day(290)]);
    expect(dates({}, { moved: { unit: 'B', date: day(40) } })).toEqual(dates());
    expect(dates({}, { moved: { unit: 'A', date: day(-40) } })[0]).toBe(asOf);
  });

  it('a move into the past counts as due now and says so; a past plan that is moved ahead is no longer past', () => {
    const past = coming({}, { moved: { unit: 'A', date: day(-40) } });
    expect(past.reason).toBe(
      `its overhaul cannot be moved to ${day(-40)}, which is past: counted as due on ${asOf}`,
    );
    const ahead = coming({ nextOverhaulDate: day(-30) }, { moved: { unit: 'A', date: day(40) } });
    expect(ahead.reason).toBeNull();
    expect(ahead.overhauls[0]?.date).toBe(day(40));
  });

  it.each([
    ['a past one counts as due now', { nextOverhaulDate: day(-30) }, 5, `planned for ${day(-30)} is past`],
    [
      'no plan at all',
      { nextOverhaulDate: null, interval_h: null },
      0,
      'no next overhaul and no interval in plan.csv',
    ],
    [
      'no plan and no overhaul',
      { nextOverhaulDate: null },
      0,
      'no overhaul on record to count the interval from',
    ],
    ['no interval', { interval_h: null }, 1, 'no interval in plan.csv: only the next overhaul is counted'],
    ['interval of zero', { interval_h: 0 }, 1, 'only the next overhaul is counted'],
    ['no hours', { hoursNow: null }, 4, 'its hours are not known: no wear is forecast'],
    ['no hours a year', { hoursPerYear: 0 }, 1, 'its hours a year are not known or zero'],
    ['not installed', { installed: false }, 0, 'not installed'],
    ['an interval of one hour', { interval_h: 1 }, 60, 'the interval is too short to be meant'],
  ])('%s: said so, the rest computed', (_, own, count, reason) => {
    const { overhauls, reason: said } = coming(own);
    expect(overhauls).toHaveLength(count);
    expect(said).toContain(reason);
  });

  it('every plan: days rise, none before the day asked on or after the last, each follows the one before', () => {
    const any = fc.record({
      ahead: fc.integer({ min: -400, max: 1500 }),
      interval_h: fc.option(fc.integer({ min: 0, max: 20_000 })),
      hoursPerYearFactor: fc.constantFrom(0.3, 1, 1.7),
      intervalFactor: fc.constantFrom(0.5, 1, 2),
      lastHours: fc.option(fc.integer({ min: 0, max: 10_000 })),
    });
    fc.assert(
      fc.property(any, ({ ahead, interval_h, lastHours, ...factors }) => {
        const { overhauls } = coming({ nextOverhaulDate: day(ahead), interval_h, lastHours }, factors);
        overhauls.forEach((overhaul, k) => {
          expect(overhaul.date >= asOf && overhaul.date <= until).toBe(true);
          expect(overhaul.unitHours as number).toBeGreaterThanOrEqual(10_000);
          const before = overhauls[k - 1];
          if (before === undefined) return;
          expect(overhaul.day).toBeGreaterThan(before.day);
          expect([overhaul.date, overhaul.unitHours]).toEqual([before.followingDate, before.followingHours]);
        });
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('refuses factors that are none', () => {
    expect(() => coming({}, { hoursPerYearFactor: 0 })).toThrow('positive factors, got 0');
  });
});
