import { describe, expect, it } from 'vitest';
import { defaultSparesSettings } from '../../lib/analysis/demand/defaultSparesSettings';
import type { IntervalPoint } from '../../lib/analysis/demand/intervalCurve';
import type { DemandRow, OrderRow, StockRow } from '../../lib/analysis/demand/types';
import { demandDescription, demandHint, demandPicture } from '../../lib/charts/demandPicture';
import { type IntervalMeasure, intervalHint, intervalPicture } from '../../lib/charts/intervalPicture';
import { orderMarks, quarterStart } from '../../lib/charts/spareDays';
import { stockPicture } from '../../lib/charts/stockPicture';
import { theme } from './checkSpec';
import { drawn } from './drawn';

const days = { asOf: '2026-10-21', until: '2028-10-21', settings: defaultSparesSettings };
const order: OrderRow = {
  part: 'TB',
  name: 'Thrust bearing',
  onHand: 2,
  onOrder: 1,
  due: '2027-01-18',
  leadTime_weeks: 18,
  shortOn: '2027-08-01',
  orderBy: '2027-03-28',
  late: false,
  quantity: 2,
  expectedShortage: 0.4,
  demandMean: 7.3,
  demandP90: 9,
  cost: 4_520,
  currency: 'EUR',
  reason: 'stock and deliveries fall short',
};
const demand = (quarter: string, mean: number, top: number): DemandRow => ({
  part: 'TB',
  quarter,
  mean,
  p10: 0,
  p50: Math.round(mean),
  p90: top,
  p95: top + 1,
  chanceOfAtLeast: [1],
});
const quarters = [demand('2026-Q4', 0.4, 1), demand('2027-Q1', 2.2, 4), demand('2028-Q4', 0, 0)];
const stock: readonly StockRow[] = [
  { part: 'TB', date: '2026-12-31', median: 2, atServiceLevel: 1 },
  { part: 'TB', date: '2027-03-31', median: 1, atServiceLevel: -2 },
];

describe('demand of a part', () => {
  it('starts quarters on their first day', () => {
    expect(quarterStart('2027-Q1')).toBe('2027-01-01');
    expect(quarterStart('2027-Q4')).toBe('2027-10-01');
  });

  it.each([false, true])('shows every quarter with its spread, and the order day', async (narrow) => {
    const svg = await drawn(demandPicture(quarters, order, days, theme, narrow));
    expect(svg).toContain('order by 2027-03-28');
    expect(svg).toContain('2027-Q1: mean 2.2, median 2, 10 to 90 % 0 to 4, 95 % 5');
    expect(svg).not.toContain('short on');
  });

  it('draws a part without demand or without quarters', async () => {
    await drawn(demandPicture([demand('2027-Q1', 0, 0)], { ...order, orderBy: null }, days, theme, false));
    await drawn(demandPicture([], order, days, theme, true));
  });

  it('says its finding', () => {
    expect(demandDescription(quarters, order)).toBe(
      '7.3 pieces in all at the mean, 9 at 90 %; most in 2027-Q1, mean 2.2.',
    );
    expect(demandDescription([demand('2027-Q1', 0, 0)], order)).toBe('No demand.');
    expect(demandHint(demand('2027-Q1', 0.55, 1.5))).toContain('10 to 90 % 0 to 1.5, 95 % 2.5');
  });
});

describe('stock of a part if nothing is ordered', () => {
  it('shows what is left and lacking, with the days of order, shortage and delivery', async () => {
    const svg = await drawn(stockPicture(stock, order, days, theme, false));
    for (const said of ['today', 'order by 2027-03-28', 'short on 2027-08-01', 'due 2027-01-18', '95\u00a0%'])
      expect(svg).toContain(said);
    expect(svg).toContain('At the end of 2027-03-31: 1 left at the median, 2 lacking at 95\u00a0%');
    await drawn(stockPicture([], { ...order, due: null, shortOn: null }, days, theme, true));
  });

  it('an order that is late stands on today; one that is not needed nowhere', () => {
    const late = { ...order, orderBy: '2026-05-01', late: true };
    expect(orderMarks(late, days.asOf)[0]).toEqual({
      kind: 'order',
      date: days.asOf,
      label: 'today: order, late',
    });
    const none = { ...order, quantity: 0, orderBy: null, shortOn: null, due: null };
    expect(orderMarks(none, days.asOf)).toEqual([{ kind: 'today', date: days.asOf, label: 'today' }]);
  });
});

describe('interval between overhauls', () => {
  const point = (group: string, interval_h: number, own: Partial<IntervalPoint> = {}): IntervalPoint => ({
    group,
    interval_h,
    planned: interval_h === 12_000,
    extrapolated: interval_h > 16_000,
    chance: interval_h / 100_000,
    overhaulsAYear: 120_000 / interval_h,
    exceedancesAYear: 1.2,
    partsAYear: [],
    costAYear: 1_000 + interval_h,
    ...own,
  });
  const points = ['Lark', 'Heron'].flatMap((group) =>
    [8_000, 12_000, 24_000].map((interval_h) => point(group, interval_h)),
  );

  it.each(['chance', 'overhaulsAYear', 'costAYear'] as const)('%s: named lines, hints', async (measure) => {
    const svg = await drawn(intervalPicture(points, measure, theme, false));
    for (const said of [
      '>Lark<',
      '>Heron<',
      'Lark, 12\u202f000\u00a0h (as planned): 12\u00a0%, 10.0 overhauls',
    ])
      expect(svg).toContain(said);
    expect(intervalHint(point('Lark', 24_000))).toContain('(longer than any run on record)');
  });

  it.each([
    ['chance', { chance: 0 }],
    ['costAYear', { costAYear: null }],
  ] as const)('draws nothing but zeros, or nothing: %s', async (measure: IntervalMeasure, own) => {
    await drawn(
      intervalPicture(
        points.map((one) => ({ ...one, ...own })),
        measure,
        theme,
        true,
      ),
    );
  });

  it('names that would cover one another are moved apart', async () => {
    const svg = await drawn(intervalPicture(points, 'chance', theme, false));
    const place = (name: string) =>
      Number(new RegExp(`translate\\([\\d.]+,([\\d.]+)\\)[^>]*>${name}<`).exec(svg)?.[1]);
    expect(Math.abs(place('Lark') - place('Heron'))).toBeGreaterThanOrEqual(12);
  });
});
