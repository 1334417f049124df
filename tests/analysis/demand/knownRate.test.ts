import { describe, expect, it } from 'vitest';
import { calendarRows } from '../../../lib/analysis/calendar/calendarRows';
import { decisionsOf } from '../../../lib/analysis/decisions/decisionsOf';
import { defaultSparesSettings } from '../../../lib/analysis/demand/defaultSparesSettings';
import { drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { sparesOf } from '../../../lib/analysis/demand/sparesOf';
import { isoDatePlus } from '../../../lib/analysis/isoDate';
import type { PartStock } from '../../../lib/analysis/plan/partStocks';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { asOf, knownPosterior, type MadeUnit, madeFit, madePart, madePlanning } from './madePlanning';

/**
 * One unit, one part, no spread: the level is 0.20 mm + 0.10 mm per 10,000 h and meets 0.45 mm at 25,000 run hours. It runs 24 h a
 * day and has 10,000 h now. The next overhaul is in 100 days, at 12,400 h; then every 6,000 h, which are 250 days: at 18,400,
 * 24,400, 30,400 h. Running on from 24,400 h would pass the limit, so the part is fitted there, on day 600; the new one has
 * 24,000 h at the fourth overhaul after, on day 1600.
 */
const statistics = wearStatistics([
  { unit: 'A', run: 'A run 0', x: 0, y: 0.2 },
  { unit: 'A', run: 'A run 0', x: 0.5, y: 0.25 },
]);
const posterior = knownPosterior({ beta: [0.2, 0.1], sdNoise_mm: 1e-9 });
const unit: MadeUnit = {
  unit: 'A',
  hoursNow: 10_000,
  nextOverhaulDate: isoDatePlus(asOf, 100),
  run: 0,
  runStart_h: 0,
};

function planningWith(stock: Partial<PartStock>, own: Partial<MadeUnit> = {}, mirroredLimit = false) {
  const fit = mirroredLimit
    ? madeFit(statistics, knownPosterior({ beta: [0.8, -0.1], sdNoise_mm: 1e-9 }))
    : madeFit(statistics, posterior);
  const limit = mirroredLimit ? { limit_mm: 0.55, side: 'lower' as const } : { limit_mm: 0.45 };
  return madePlanning(
    [{ ...unit, ...own }],
    [{ fit, ...limit, byPart: true, part: 'TB' }],
    [madePart('TB', stock)],
  );
}
const sparesWith = (...with_: Parameters<typeof planningWith>) =>
  sparesOf(drawFleet(planningWith(...with_), { draws: 50 }));
const day = (days: number) => isoDatePlus(asOf, days);
const quarters = (spares: ReturnType<typeof sparesOf>) =>
  spares.demand
    .filter(({ mean }) => mean > 0)
    .map(({ quarter, mean, p10, p95 }) => [quarter, mean, p10, p95]);

describe.each([
  ['an upper limit', false],
  ['a lower limit, mirrored', true],
])('one unit, one part, known rate, no spread: %s', (_, mirroredLimit) => {
  it('fits the part on the very days and in no other quarter', () => {
    const spares = sparesWith({}, {}, mirroredLimit);
    expect(day(600)).toBe('2027-08-24');
    expect(day(1600)).toBe('2030-05-20');
    expect(quarters(spares)).toEqual([
      ['2027-Q3', 1, 1, 1],
      ['2030-Q2', 1, 1, 1],
    ]);
    expect(spares.expectedExceedances).toBe(0);
    expect(spares.overhauls).toBe(7);
  });

  it('decides to run on, then to fit the part, then to run on', () => {
    const decisions = decisionsOf(planningWith({}, {}, mirroredLimit), {
      acceptedRisk: 0.1,
      horizonMonths: 36,
    });
    expect(decisions.map(({ date, action }) => [date, action])).toEqual([
      [day(100), 'run on'],
      [day(350), 'run on'],
      [day(600), 'fit new part'],
      [day(850), 'run on'],
    ]);
    expect(decisions.map(({ chanceRunningOn }) => chanceRunningOn)).toEqual([0, 0, 1, 0]);
    expect(decisions[2]?.parts).toEqual([
      { part: 'TB', pieces: 1, because: 'limit', series: ['thrust_play'] },
    ]);
  });

  it('brings an overhaul forward to the last day before the limit is met', () => {
    const own = { hoursNow: 20_000, nextOverhaulDate: day(300), interval_h: 6_000 };
    const [decision] = decisionsOf(planningWith({}, own, mirroredLimit));
    // 5,000 h at 24 h a day are 208.3 days.
    expect(decision).toMatchObject({
      action: 'bring forward',
      bringForwardTo: day(208),
      chanceBefore: 1,
      drivenBy: 'thrust_play',
    });
    expect(sparesWith({}, own, mirroredLimit).exceedances[0]).toMatchObject({ endsOn: day(300), chance: 1 });
  });
});

describe('orders of a known demand', () => {
  it.each([
    ['no stock: short on day 600, 10 weeks earlier to order', {}, 600, 530, 1],
    ['one on hand: the second is short', { onHand: 1 }, 1600, 1530, 1],
    ['one due in time counts', { onOrder: 1, due: day(599) }, 1600, 1530, 1],
    [
      'one due a day late leaves a gap that an order in time would close',
      { onOrder: 1, due: day(601) },
      600,
      530,
      1,
    ],
    ['two pieces a unit', { perUnit: new Map([['Crane', 2]]), onHand: 1 }, 600, 530, 1],
    ['zero lead time: order on the day', { leadTime_weeks: 0 }, 600, 600, 1],
  ])('%s', (_, stock, short, order, quantity) => {
    const [row] = sparesWith(stock).orders;
    expect(row).toMatchObject({ shortOn: day(short), orderBy: day(order), quantity, late: false });
  });

  it('stock for all of it: nothing to order', () => {
    const [row] = sparesWith({ onHand: 2 }).orders;
    expect(row).toMatchObject({ shortOn: null, orderBy: null, quantity: 0, expectedShortage: 0, cost: 0 });
    expect(row?.reason).toContain('meet demand up to 2031-01-01');
  });

  it('a lead time longer than what is left: the last order day is past, and the order lasts from today', () => {
    const [row] = sparesWith({ leadTime_weeks: 100 }).orders;
    expect(row).toMatchObject({ shortOn: day(600), orderBy: day(-100), late: true, quantity: 1 });
    expect(row?.reason).toContain(`the last order day ${day(-100)} is past`);
  });

  it('no lead time: short on, but no order day', () => {
    const [row] = sparesWith({ leadTime_weeks: null }).orders;
    expect(row).toMatchObject({ shortOn: day(600), orderBy: null, late: false, quantity: 1 });
    expect(row?.reason).toContain('no lead time');
  });

  it('a delivery heals a gap that no order could close any more, and the next gap counts', () => {
    const stock = { leadTime_weeks: 90, onOrder: 1, due: day(620) };
    const [row] = sparesWith(stock).orders;
    expect(row).toMatchObject({ shortOn: day(1600), orderBy: day(970), quantity: 1 });
    expect(row?.reason).toContain(`short from ${day(600)} until the delivery due on ${day(620)}`);
  });

  it('quantity lasts over lead time plus review period', () => {
    const planning = planningWith({});
    const review = (reviewPeriod_weeks: number) =>
      sparesOf(drawFleet(planning, { draws: 20 }), { ...defaultSparesSettings, reviewPeriod_weeks }).orders[0]
        ?.quantity;
    expect(review(142)).toBe(1);
    // 1,000 days lie between the two fittings: 142.86 weeks.
    expect(review(143)).toBe(2);
  });
});

describe('rated life', () => {
  it('calls for the rotating part at the last overhaul before it ends, in decisions and demand alike', () => {
    const life = { ratedLife_h: 20_000 };
    const parts = [madePart('TB'), madePart('RS', { series: ['runout'] })];
    const fit = madeFit(statistics, posterior);
    const planning = madePlanning(
      [{ ...unit, ...life }],
      [{ fit, limit_mm: 0.45, byPart: true, part: 'TB' }],
      parts,
      'RS',
    );
    const wanted = decisionsOf(planning).filter(({ parts: list }) => list.some(({ part }) => part === 'RS'));
    // At 18,400 h the following overhaul, at 24,400 h, would be past 20,000 h.
    expect(
      wanted.map(({ date, action, drivenBy, ratedLifeEnds }) => [date, action, drivenBy, ratedLifeEnds]),
    ).toEqual([[day(350), 'fit new part', 'rated life', day(416)]]);
    const spares = sparesOf(drawFleet(planning, { draws: 20 }));
    const rotating = spares.demand.filter(({ part, mean }) => part === 'RS' && mean > 0);
    // A new one at 18,400 h lasts to 38,400 h; the overhaul before that is at 36,400 h, day 1100.
    expect(rotating.map(({ quarter }) => quarter)).toEqual(['2026-Q4', '2029-Q1']);
  });

  it('that ends before the overhaul brings it forward', () => {
    const [decision] = decisionsOf(planningWith({}, { ratedLife_h: 12_000 }));
    // 2,000 h are 83.3 days.
    expect(decision).toMatchObject({
      action: 'bring forward',
      bringForwardTo: day(83),
      drivenBy: 'rated life',
    });
  });
});

describe('calendar of a known plan', () => {
  it('holds overhauls with decisions, the order day and nothing beyond 24 months', () => {
    const planning = planningWith({});
    const rows = calendarRows(decisionsOf(planning), sparesOf(drawFleet(planning, { draws: 20 })));
    expect(rows.map(({ kind, date }) => [kind, date])).toEqual([
      ['overhaul', day(100)],
      ['overhaul', day(350)],
      ['order', day(530)],
      ['overhaul', day(600)],
    ]);
    expect(rows[3]?.summary).toBe('Overhaul A (E-A): fit new part');
    expect(rows[3]?.detail).toContain('1 x TB (limit)');
  });
});
