import { describe, expect, it } from 'vitest';
import { isDay, paperSettings, sameView } from '../../app/report/reportAddress';
import {
  changeKind,
  changeName,
  changeStates,
  changesSentence,
  openedSince,
} from '../../app/words/paperChangeWords';
import {
  daySentence,
  emptyPaperSentence,
  heldReason,
  heldSentence,
  noUrgentUnit,
  ordersSentence,
  paperDriftSentence,
  paperTitle,
  scopeWords,
} from '../../app/words/reportWords';
import { comparePapers } from '../../lib/analysis/report/comparePapers';
import { ordersDueOf } from '../../lib/analysis/report/paperSummary';
import type { HeldRows, PaperChange } from '../../lib/analysis/report/types';
import { wholeFleet } from '../../lib/analysis/scope';
import { finding, order, summary, unitOnPaper } from '../analysis/report/madePapers';
import { asOf, characteristics, fleet } from './fixture';
import { paper } from './madePaper';

const plain = (text: string | null) => text?.replaceAll(/[\u202f\u00a0]/g, ' ') ?? null;
const query = (text: string) => new URLSearchParams(text);

describe('what the paper is of', () => {
  it('is said in words', () => {
    expect(scopeWords(wholeFleet)).toBe('the whole fleet');
    expect(scopeWords({ ...wholeFleet, site: 'Skua Head' })).toBe('units at Skua Head');
    expect(scopeWords({ ...wholeFleet, frame: 'Lark', workshop: 'Merrow Works' })).toBe(
      'frame Lark opened last by Merrow Works',
    );
    expect(scopeWords({ ...wholeFleet, units: ['A', 'B'] })).toBe('units of A, B');
    expect(paperTitle(paper())).toBe('Planning paper for the whole fleet, as of 2026-11-01: 3 units.');
    const one = fleet({ units: fleet().units.slice(0, 1) });
    expect(paperTitle(paper({ scope: { ...wholeFleet, site: 'South Stack' }, fleet: one }))).toBe(
      'Planning paper for units at South Stack, as of 2026-11-01: 1 of 3 units.',
    );
  });

  it('comes from the address, and what is not understood is as usual', () => {
    const usual = paperSettings(query(''), asOf);
    expect([usual.asOf, usual.since, usual.scope]).toEqual([asOf, null, wholeFleet]);
    const asked = paperSettings(
      query('date=2025-06-30&since=2023-06-30&site=Skua+Head&units=A%252C1,B&risk=20'),
      asOf,
    );
    expect([asked.asOf, asked.since, asked.scope.site]).toEqual(['2025-06-30', '2023-06-30', 'Skua Head']);
    expect(asked.scope.units).toEqual(['A,1', 'B']);
    expect(asked.spares.acceptedRisk).toBe(0.2);
    expect(paperSettings(query('date=2025-02-30&since=soon'), asOf)).toEqual(usual);
    // A day of comparison has to be earlier.
    expect(paperSettings(query(`since=${asOf}`), asOf).since).toBeNull();
    expect(['2024-02-29', '2023-02-29', '0024-02-29', '2024-2-9'].map(isDay)).toEqual([
      true,
      false,
      false,
      false,
    ]);
    expect(sameView('/', query('site=A+B&since=2020-01-01&risk=5'), ['site', 'risk'])).toBe(
      '/?site=A+B&risk=5',
    );
    expect(sameView('/drift/', query('site=A'), ['budget'])).toBe('/drift/');
  });

  it('says what there is too little of', () => {
    expect(emptyPaperSentence(paper())).toBeNull();
    expect(
      emptyPaperSentence(paper({ fleet: fleet({ units: [] }), scope: { ...wholeFleet, site: 'Nowhere' } })),
    ).toBe('No unit is in the scope (units at Nowhere) on 2026-11-01: choose another one.');
    expect(emptyPaperSentence(paper({ fleet: fleet({ fits: [] }) }))).toBe(
      'No reading in the scope is dated up to 2026-11-01; the first overhaul on record is of 2014-02-01: choose a later day.',
    );
    expect(emptyPaperSentence(paper({ fleet: fleet({ units: [] }) }))).toContain('hold no unit');
    expect(daySentence(asOf, asOf)).toBeNull();
    expect(daySentence('2024-01-01', asOf)).toMatch(
      /^Overhauls and readings after 2024-01-01 are left out\./,
    );
    expect(daySentence('2027-01-01', asOf)).toMatch(/^The latest day in the records is 2026-11-01: /);
  });
});

it('no unit is said to wait that nothing is known of', () => {
  const units = (...chances: readonly (number | null)[]) => chances.map((chanceNow) => ({ chanceNow }));
  expect(noUrgentUnit(units(0.01, 0.02))).toBe('Every unit can wait for its next planned overhaul.');
  expect(noUrgentUnit(units(0.01, null, null))).toBe(
    'Every unit with a forecast can wait for its next planned overhaul; 2 units without one cannot be judged.',
  );
  expect(noUrgentUnit(units(null))).not.toContain('can wait');
});

describe('what is held', () => {
  const row = (unit: string | null, effect: HeldRows['effect'], held = 1): HeldRows => ({
    unit,
    held,
    reasons: 1,
    reason: 'not a number',
    effect,
  });

  it('is counted, with what it does to the forecasts', () => {
    expect(plain(heldSentence(paper()))).toMatch(/^Nothing is held of the units in the scope; of /);
    expect(plain(heldSentence(paper({ held: [row('A', 'forecast without them', 2)] })))).toMatch(
      /^2 rows and cells are held of 1 unit in the scope; it still has its forecast, made without them; of /,
    );
    expect(plain(heldSentence(paper({ held: [row('A', 'no forecast'), row('B', 'no forecast')] })))).toMatch(
      /^2 rows and cells are held of 2 units in the scope; they have no whole forecast; of /,
    );
    const held = [row('A', 'no forecast'), row('B', 'forecast without them'), row(null, 'unit not known')];
    expect(plain(heldSentence(paper({ held })))).toMatch(
      /^2 rows and cells are held of 2 units in the scope; 1 unit has no whole forecast, the other one made without them; 1 held belongs to no known unit; of /,
    );
    expect(plain(heldSentence(paper({ held: [row(null, 'unit not known', 2)] })))).toMatch(
      /^No unit in the scope is known to have held rows; 2 held belong to no known unit; of /,
    );
    expect(heldReason({ reason: 'not a number', reasons: 1 })).toBe('not a number');
    expect(heldReason({ reason: 'not a number', reasons: 2 })).toBe('not a number; and 1 other reason');
  });
});

describe('signals and orders', () => {
  it('of a scope are not counted in readings of the whole fleet', () => {
    const scope = { ...wholeFleet, site: 'South Stack' };
    expect(paperDriftSentence(paper({ scope }), [])).toBe(
      'No signal among 3 units: nothing moves unlike its own forecast.',
    );
    expect(paperDriftSentence(paper(), [])).toBe(
      'No signal in 240 readings: nothing moves unlike its own forecast.',
    );
  });

  it('an order is due if it is late, has no known day, or falls before the next look at the stock', () => {
    // 2026-11-01 and 13 weeks: 2027-01-31.
    const orders = [
      order('late', { orderBy: '2026-09-01', late: true }),
      order('last day', { orderBy: '2027-01-31' }),
      order('day after', { orderBy: '2027-02-01' }),
      order('no day', { orderBy: null }),
      order('none', { orderBy: '2026-12-01', quantity: 0 }),
    ];
    const due = ordersDueOf({ ...paper().spares, orders });
    expect(due.map(({ part }) => part)).toEqual(['late', 'last day', 'no day']);
    expect(ordersSentence(paper(), due)).toBe(
      '3 orders have to be placed now or within 13 weeks, before the stock is looked at next: late, last day, no day.',
    );
    expect(ordersSentence(paper({ scope: { ...wholeFleet, frame: 'Lark' } }), [])).toMatch(
      /^No order has to be placed within 13 weeks, .* Stock and orders are those of the whole fleet/,
    );
  });
});

describe('what changed', () => {
  const range = ['2027-01-01', '2027-07-01', '2028-01-01'] as const;
  const changes = comparePapers(
    summary('2024-10-21', {
      units: [
        unitOnPaper('A', range, { cannotWait: true, chanceAtNextOverhaul: 0.4 }),
        unitOnPaper('B', range, { cannotWait: true, nextOverhaulDate: null, chanceAtNextOverhaul: null }),
      ],
      findings: [finding('A', 'runout')],
    }),
    summary('2026-10-21', {
      units: [unitOnPaper('A', ['2031-01-01', '2032-01-01', null], { lastOverhaulDate: '2026-03-01' })],
      ordersDue: [order('TB', { orderBy: '2026-09-01', late: true })],
    }),
  );
  const said = (change: PaperChange) => {
    const { before, after } = changeStates(change, characteristics);
    const words = [
      changeName(change, characteristics),
      changeKind(change),
      before,
      after,
      openedSince(change),
    ];
    return plain(words.join(' | '));
  };

  it('is said unit by unit, with both states and whether the unit was opened', () => {
    expect(changes.map(said)).toEqual([
      'A | can wait now | 40 % by 2028-01-01 | 4 % by 2028-01-01 | opened on 2026-03-01',
      'B | can wait now | no overhaul planned | not in the scope | ',
      'A | date moved | 2027-07-01 (2027-01-01 to 2028-01-01), thrust play | 2032-01-01 (2031-01-01 to beyond), thrust play | opened on 2026-03-01',
      'A, runout | signal gone | high since 2025-02-01, by chance once in 50 years | no signal | ',
      'TB | order newly due | not due | 2 by 2026-09-01, late | ',
    ]);
  });

  it('is counted in a sentence', () => {
    expect(changesSentence(changes, '2024-10-21')).toBe(
      'Since 2024-10-21 0 units newly cannot wait and 2 units now can; the date of 1 unit moved by more than its uncertainty; 0 signals came and 1 signal went; 1 order is newly due and 0 orders no longer.',
    );
    expect(changesSentence([], '2024-10-21')).toBe(
      'Since 2024-10-21 nothing has changed that a plan turns on.',
    );
  });
});
