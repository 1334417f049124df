import { describe, expect, it } from 'vitest';
import { calendarRows } from '../../../lib/analysis/calendar/calendarRows';
import { decisionsOf } from '../../../lib/analysis/decisions/decisionsOf';
import { drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { sparesOf } from '../../../lib/analysis/demand/sparesOf';
import { isoDatePlus } from '../../../lib/analysis/isoDate';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { asOf, knownPosterior, type MadeUnit, madeFit, madePart, madePlanning } from '../demand/madePlanning';

/** 0.20 mm + 0.10 mm per 10,000 h without spread meets 0.45 mm at 25,000 run hours; 24 h a day. */
const fit = madeFit(
  wearStatistics([
    { unit: 'A', run: 'A run 0', x: 0, y: 0.2 },
    { unit: 'A', run: 'A run 0', x: 0.5, y: 0.25 },
  ]),
  knownPosterior({ beta: [0.2, 0.1], sdNoise_mm: 1e-9 }),
);
const day = (days: number) => isoDatePlus(asOf, days);

function planned(own: Partial<MadeUnit>) {
  const unit = { unit: 'A', hoursNow: 12_990, interval_h: 6_000, run: 0, runStart_h: 0, ...own };
  return madePlanning([unit], [{ fit, limit_mm: 0.45, byPart: true, part: 'TB' }], [madePart('TB')]);
}

function calendarOf(own: Partial<MadeUnit>) {
  const planning = planned(own);
  return calendarRows(decisionsOf(planning), sparesOf(drawFleet(planning, { draws: 20 })));
}

describe('a unit whose next overhaul lies beyond the horizon', () => {
  const late = { nextOverhaulDate: day(900) };

  it('is decided all the same: the limit comes before it', () => {
    // 12,010 h to the limit are 500.4 days.
    expect(decisionsOf(planned(late))).toMatchObject([
      { overhaul: 1, date: day(900), action: 'bring forward', bringForwardTo: day(500), reason: null },
    ]);
  });

  it('has the day to bring it forward to in the calendar, and the overhaul not', () => {
    const own = calendarOf(late).filter(({ subject }) => subject === 'A');
    expect(own.map(({ kind, date }) => [kind, date])).toEqual([['bring forward', day(500)]]);
    expect(own[0]?.detail).toBe(`Planned for ${day(900)}`);
  });

  it('and its later overhauls are left out', () => {
    expect(decisionsOf(planned({ nextOverhaulDate: day(731), interval_h: 100 }))).toHaveLength(1);
  });
});

describe('a unit without a plan', () => {
  it('has no verdict and says why; the end of its rated life is told', () => {
    const own = {
      nextOverhaulDate: null,
      interval_h: null,
      ratedLife_h: 25_000,
      ratedLifeDate: day(500),
    };
    const [decision] = decisionsOf(planned(own));
    expect(decision).toMatchObject({ action: null, date: null, ratedLifeEnds: day(500) });
    expect(decision?.reason).toContain('no next overhaul and no interval in plan.csv');
    expect(calendarOf(own).map(({ kind, date }) => [kind, date])).toEqual([['rated life ends', day(500)]]);
  });

  it('whose rated life is past has it end on the day asked on', () => {
    const own = { nextOverhaulDate: null, interval_h: null, ratedLife_h: 9_000, ratedLifeDate: day(-30) };
    expect(decisionsOf(planned(own))[0]?.ratedLifeEnds).toBe(asOf);
  });
});

it('refuses a risk that is none', () => {
  expect(() => decisionsOf(planned({}), { acceptedRisk: 1, horizonMonths: 24 })).toThrow(
    'inside 0 to 1, got 1',
  );
});
