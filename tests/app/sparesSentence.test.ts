import { describe, expect, it } from 'vitest';
import { acceptedRiskOf } from '../../app/decisions/AcceptedRisk';
import { changedPlan, intervalCosts, partAddress, sparesSettings } from '../../app/spares/sparesAddress';
import { adviceSentence, limitWhyWords, partsWords, whyWords } from '../../app/words/decisionWords';
import { costGap, intervalSentences } from '../../app/words/intervalSentence';
import { namesWords } from '../../app/words/namesWords';
import { sparesSentence, whatIfSentence } from '../../app/words/sparesSentence';
import type { Decision, SeriesDecision } from '../../lib/analysis/decisions/types';
import { defaultSparesSettings } from '../../lib/analysis/demand/defaultSparesSettings';
import type { IntervalPoint } from '../../lib/analysis/demand/intervalCurve';
import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import { formatPercent } from '../../lib/charts/format';
import { builtInCharacteristics } from '../../lib/records/characteristics';

const plain = (text: string | null) => text?.replaceAll(/[\u202f\u00a0]/g, ' ') ?? null;
const query = (text: string) => new URLSearchParams(text);

function order(part: string, own: Partial<OrderRow> = {}): OrderRow {
  return {
    part,
    name: null,
    onHand: 0,
    onOrder: 0,
    due: null,
    leadTime_weeks: 10,
    shortOn: '2027-06-01',
    orderBy: '2027-03-01',
    late: false,
    quantity: 2,
    expectedShortage: 1,
    demandMean: 3,
    demandP90: 4,
    cost: 1_000,
    currency: 'EUR',
    reason: '',
    ...own,
  };
}

const nothing = { quantity: 0, shortOn: null, orderBy: null, cost: 0 };

function spares(orders: readonly OrderRow[], own: Partial<Spares> = {}): Spares {
  return {
    asOf: '2026-10-21',
    until: '2031-10-21',
    settings: defaultSparesSettings,
    draws: 1_000,
    seed: 1,
    demand: [],
    orders,
    stock: [],
    budget: [],
    exceedances: [],
    expectedExceedances: 4.6,
    overhauls: 138,
    totals: [{ currency: 'EUR', cost: orders.reduce((sum, { cost }) => sum + (cost ?? 0), 0) }],
    messages: [],
    ...own,
  };
}

describe('what to order', () => {
  const said = (orders: readonly OrderRow[], own: Partial<Spares> = {}) =>
    plain(sparesSentence(spares(orders, own)));

  it('names the money, the late ones and the next', () => {
    const late = order('RS', { orderBy: '2026-01-14', late: true, cost: 117_600, quantity: 4 });
    expect(said([order('GS', nothing), order('TB', { name: 'Thrust bearing' }), late])).toBe(
      '2 parts to order for 118 600 EUR; 1 order is already late: 4 of RS; the next is 2 of TB (Thrust bearing) by 2027-03-01.',
    );
    expect(said([order('TB')])).toBe('1 part to order for 1 000 EUR; the first is 2 of TB by 2027-03-01.');
  });

  it('a part that is short without a lead time is to order, and its day cannot be told', () => {
    const undated = order('TB', { orderBy: null, leadTime_weeks: null, cost: null, currency: null });
    expect(said([undated], { totals: [] })).toBe(
      '1 part to order, 1 of them without a price; without a lead time no day can be told for 2 of TB.',
    );
  });

  it('nothing to order: what could not be told is not claimed', () => {
    const meets =
      'Nothing needs ordering: what is on hand and due meets the demand up to 2031-10-21 with a chance of 95 %.';
    expect(said([order('TB', nothing)])).toBe(meets);
    expect(said([order('TB', nothing)], { messages: [{ about: 'unit', name: 'A', text: 'no plan' }] })).toBe(
      `${meets} This leaves out what is listed below as lacking.`,
    );
  });

  it('without parts or overhauls it says what to add', () => {
    expect(said([])).toContain('add parts.csv');
    expect(said([order('TB')], { overhauls: 0 })).toContain('add plan.csv');
  });

  it('never adds currencies, counts names beyond a few, keeps the digits of a percentage', () => {
    const totals = [
      { currency: 'EUR', cost: 10 },
      { currency: 'USD', cost: 20 },
      { currency: 'GBP', cost: 0 },
    ];
    expect(said([order('TB')], { totals })).toContain('for 10 EUR and 20 USD;');
    expect(namesWords(['A', 'B', 'C'], 2)).toBe('A, B and 1 more');
    expect([0.1, 0.995, 0.07].map((share) => plain(formatPercent(share)))).toEqual(['10 %', '99.5 %', '7 %']);
  });

  it('a changed plan is told as a difference', () => {
    const words = whatIfSentence({
      changed: spares([]),
      parts: [],
      overhauls: { present: 138, changed: 121 },
      expectedExceedances: { present: 4.6, changed: 4.6 },
      totals: [{ currency: 'EUR', cost: { present: 10, changed: 12 } }],
      messages: [],
    });
    expect(plain(words)).toBe(
      'Overhauls 138 to 121; intervals expected to pass a limit in service 4.6, unchanged; cost of orders 10 EUR to 12 EUR; 0 parts changed.',
    );
  });
});

describe('settings in the address', () => {
  it('are the usual ones where none, or none in range, are given', () => {
    expect(sparesSettings(query(''))).toEqual(defaultSparesSettings);
    expect(sparesSettings(query('risk=abc&service=200&review=-1'))).toEqual(defaultSparesSettings);
    expect(sparesSettings(query('risk=25&service=99.5&review=0'))).toMatchObject({
      acceptedRisk: 0.25,
      serviceLevel: 0.995,
      reviewPeriod_weeks: 0,
    });
    expect([query('risk=5'), query('risk=0'), query('')].map(acceptedRiskOf)).toEqual([0.05, 0.1, 0.1]);
  });

  it('a changed plan is one only if something changes', () => {
    const present = sparesSettings(query(''));
    for (const text of ['', 'lead=1', 'wrisk=10', 'moved=A', 'to=2027-01-01', 'moved=A&to=soon'])
      expect(changedPlan(query(text), present), text).toBeNull();
    expect(changedPlan(query('lead=2&hours=120&interval=50&moved=A&to=2027-01-01'), present)).toMatchObject({
      leadTimeFactor: 2,
      changes: {
        hoursPerYearFactor: 1.2,
        intervalFactor: 0.5,
        moved: { unit: 'A', date: '2027-01-01' },
      },
    });
  });

  it('costs count once all three are given; another part keeps the rest of the view', () => {
    expect(intervalCosts(query('costo=0&coste=5e4&currency= EUR '))).toEqual({
      given: [true, true, true],
      costs: { overhaul: 0, exceedance: 50_000, currency: 'EUR' },
    });
    expect(intervalCosts(query('costo=1&coste=-2'))).toEqual({ given: [true, false, false], costs: null });
    expect(partAddress(query('risk=20&part=A'), 'B;1')).toBe('?risk=20&part=B%3B1');
  });
});

describe('what to do at an overhaul', () => {
  const limit: SeriesDecision = {
    series: 'thrust_play',
    limitKind: 'upper',
    limit_mm: 0.45,
    action: 'measure again',
    chanceBefore: 0.31,
    chanceRunningOn: 0.9,
    chanceRenewed: 0,
    bringForwardTo: '2027-02-01',
    doubt: 'one reading in the run',
    reason: null,
  };
  const decision: Decision = {
    unit: 'A',
    group: 'Crane',
    engine: null,
    bank: null,
    overhaul: 1,
    date: '2027-05-01',
    unitHours: 20_000,
    followingDate: null,
    action: 'measure again',
    bringForwardTo: null,
    chanceBefore: 0.31,
    chanceRunningOn: 0.9,
    drivenBy: 'thrust_play',
    series: [limit],
    parts: [{ part: 'RS', pieces: 1, because: 'rated life', series: [] }],
    ratedLifeEnds: '2028-01-01',
    reason: null,
  };

  it('says the driver, the rated life, the doubt, and the day that holds without a reading', () => {
    expect(plain(whyWords(decision, builtInCharacteristics))).toBe(
      'the rated life ends on 2028-01-01; thrust play: chance of passing its limit 31 % before this overhaul, 90 % before the following one if nothing is fitted; a reading now would decide, since there is one reading in the present run; without one, bring forward to 2027-02-01',
    );
    expect(limitWhyWords(limit)).toContain('without one, bring forward to 2027-02-01');
    expect(limitWhyWords({ ...limit, doubt: null })).toBeNull();
    expect(partsWords(decision)).toBe('1 × RS (rated life)');
  });

  it('counts the advice, the weightiest first, at the accepted risk', () => {
    const others: readonly Decision[] = [
      decision,
      { ...decision, action: 'bring forward' },
      { ...decision, action: null },
    ];
    expect(plain(adviceSentence(others, 0.1))).toBe(
      'Of 3 units, at an accepted risk of 10 %: bring forward 1, measure again 1, no verdict 1.',
    );
    expect(adviceSentence([], 0.1)).toBe('No unit is listed.');
  });
});

describe('interval between overhauls', () => {
  const point = (interval_h: number, costAYear: number | null): IntervalPoint => ({
    group: 'Lark',
    interval_h,
    planned: interval_h === 12_000,
    extrapolated: interval_h > 20_000,
    chance: interval_h / 100_000,
    overhaulsAYear: 60_000 / interval_h,
    exceedancesAYear: 0,
    partsAYear: [],
    costAYear,
  });

  it('says the planned interval, both ends, and the least cost with what it rests on', () => {
    const priced = [point(8_000, 30), point(12_000, 25), point(24_000, 20)];
    expect(intervalSentences(priced, 'EUR').map(plain)).toEqual([
      'Lark: as planned 12 % and 5.0 overhauls a year at 12 000 h, 25 EUR a year; 8 % and 7.5 overhauls a year at 8 000 h, 30 EUR a year; 24 % and 2.5 overhauls a year at 24 000 h, 20 EUR a year; least cost of the intervals within what was measured at 12 000 h, lower beyond it, where no run on record supports the curve.',
    ]);
    expect(plain(intervalSentences([point(8_000, null)], null)[0] ?? null)).toBe(
      'Lark: no interval is planned; 8 % and 7.5 overhauls a year at 8 000 h.',
    );
  });

  it('says what keeps the cost from being told', () => {
    const unpriced = [point(8_000, null)];
    expect(costGap(unpriced, [false, false, false], null)).toBeNull();
    expect(costGap(unpriced, [true, false, true], null)).toContain('once both costs and the currency');
    expect(costGap(unpriced, [true, true, true], 'USD')).toBe(
      'No cost of Lark: a part that is fitted there has no price in USD.',
    );
    expect(costGap([point(8_000, 5)], [true, true, true], 'EUR')).toBeNull();
  });
});
