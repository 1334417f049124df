import { readFileSync } from 'node:fs';
import { csvParse } from 'd3-dsv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { calendarRows } from '../../../lib/analysis/calendar/calendarRows';
import { iCalendar } from '../../../lib/analysis/calendar/iCalendar';
import { decisionsOf } from '../../../lib/analysis/decisions/decisionsOf';
import type { Decision } from '../../../lib/analysis/decisions/types';
import { drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { sparesOf } from '../../../lib/analysis/demand/sparesOf';
import type { Spares } from '../../../lib/analysis/demand/types';
import { type Analysis, openAnalysis } from '../../../lib/analysis/openAnalysis';
import { type Planning, planningOf } from '../../../lib/analysis/plan/planning';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { filesOf } from '../../support/withRecords';

let database: Awaited<ReturnType<typeof openNodeDatabase>>;
let analysis: Analysis;
let planning: Planning;
let decisions: readonly Decision[];
let spares: Spares;

async function opened(change: (name: string, text: string) => string = (_, text) => text): Promise<Analysis> {
  const files = filesOf('data/demo').map(({ name, bytes }) => ({
    name,
    bytes: new TextEncoder().encode(change(name, new TextDecoder().decode(bytes))),
  }));
  const settings = { asOf: null, groupBy: 'frame' } as const;
  return openAnalysis(await database.connect(), files, 'demo', settings, async () => {});
}

beforeAll(async () => {
  database = await openNodeDatabase();
  analysis = await opened();
  planning = await planningOf(analysis);
  decisions = decisionsOf(planning);
  spares = sparesOf(drawFleet(planning, { draws: 300 }));
});
afterAll(() => database.close());

const partRows = csvParse(readFileSync('data/demo/parts.csv', 'utf8'));
const decisionOf = (unit: string) => decisions.find((one) => one.unit === unit && one.overhaul === 1);

describe('the demo fleet', () => {
  it('takes rules from limits.csv and parts.csv: which series goes on until which part is fitted', () => {
    const unit = planning.units.find((one) => one.plan.unit.row.unit === 'O-3005');
    const rules = new Map(
      unit?.series.map((one) => [`${one.series} ${one.side}`, [one.byPart, one.partToFit]]),
    );
    expect(rules.get('thrust_play upper')).toEqual([true, 'TB-O']);
    expect(rules.get('tip_turbine_largest upper')).toEqual([false, 'SR-O']);
    expect(rules.get('runout upper')).toEqual([false, 'RS-O']);
    expect(unit?.consumables).toEqual([
      { part: 'GS-O', pieces: 1 },
      { part: 'JB-O', pieces: 2 },
    ]);
    expect(unit?.rotatingPart).toEqual({ part: 'RS-O', pieces: 1 });
    expect(unit?.series.some((one) => one.series === 'nut_stand_out')).toBe(false);
  });

  it('brings the fast thrust bearing and the ones left in forward, before the overhaul and not before today', () => {
    for (const name of ['O-3005', 'H-2009']) {
      const decision = decisionOf(name);
      expect(decision).toMatchObject({ action: 'bring forward', drivenBy: 'thrust_play' });
      const day = decision?.bringForwardTo ?? '';
      expect(day > planning.asOf && day < (decision?.date ?? '')).toBe(true);
    }
  });

  it('asks for the rotating part where the rated life ends before the following overhaul', () => {
    const ends = decisions.filter(({ ratedLifeEnds }) => ratedLifeEnds !== null).map(({ unit }) => unit);
    expect(ends).toEqual(expect.arrayContaining(['H-2001', 'H-2002', 'H-2003', 'H-2004']));
    for (const { parts, ratedLifeEnds, date, followingDate } of decisions) {
      if (ratedLifeEnds === null) continue;
      expect(parts.some(({ because }) => because === 'rated life')).toBe(true);
      expect(ratedLifeEnds >= (date ?? '') && ratedLifeEnds <= (followingDate ?? '')).toBe(true);
    }
  });

  it('says the chance that the Fleet page says for the next overhaul', () => {
    let compared = 0;
    for (const margin of analysis.fleet.margins) {
      const own = decisionOf(margin.unit)?.series.find(
        (one) => one.series === margin.series && one.limitKind === margin.limitKind,
      );
      if (own?.chanceBefore == null || margin.chanceAtNextOverhaul === null) continue;
      expect(own.chanceBefore).toBeCloseTo(margin.chanceAtNextOverhaul, 9);
      compared++;
    }
    expect(compared).toBeGreaterThan(250);
  });

  it('draws the chance of an exceedance that the mixtures give: the sum over units agrees', () => {
    const first = new Map(spares.exceedances.toReversed().map(({ unit, chance }) => [unit, chance]));
    const compared = decisions.filter(
      ({ unit, overhaul, chanceBefore }) => overhaul === 1 && chanceBefore !== null && first.has(unit),
    );
    const sum = (value: (one: Decision) => number) => compared.reduce((total, one) => total + value(one), 0);
    expect(compared.length).toBeGreaterThan(45);
    expect(
      Math.abs(sum(({ unit }) => first.get(unit) ?? 0) - sum(({ chanceBefore }) => chanceBefore ?? 0)),
    ).toBeLessThan(0.15);
  });

  it('lists every part with an order row and a demand row for each of 21 quarters', () => {
    expect(spares.orders.map(({ part }) => part)).toEqual(partRows.map(({ part }) => part).sort());
    expect(spares.demand).toHaveLength(21 * partRows.length);
    expect(spares.demand[0]?.quarter).toBe('2026-Q4');
    expect(spares.demand[20]?.quarter).toBe('2031-Q4');
    expect(spares.messages).toEqual([
      { about: 'unit', name: 'H-2016', text: 'not installed: no overhaul is planned' },
    ]);
  });

  it('holds no number that is none, and never calls anything safe', () => {
    const check = (value: unknown): void => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      else if (typeof value === 'string') expect(value).not.toMatch(/\bsafe|undefined|NaN|null\b/i);
      else if (value instanceof Object) for (const part of Object.values(value)) check(part);
      else expect(value).not.toBeUndefined();
    };
    check(decisions);
    check(spares);
  });

  it('has a calendar of 24 months whose every event is unlike the others', () => {
    const rows = calendarRows(decisions, spares);
    expect(rows.every(({ date }) => date >= '2026-10-21' && date <= '2028-10-21')).toBe(true);
    expect(new Set(rows.map(({ kind }) => kind)).size).toBe(5);
    const uids = iCalendar(rows, planning.asOf, '').match(/^UID:.*$/gm) ?? [];
    expect(uids).toHaveLength(rows.length);
    expect(new Set(uids).size).toBe(rows.length);
  });
});

describe('tables that lack something: said, and the rest computed', () => {
  let changed: Planning;
  let result: Spares;
  let texts: readonly string[];
  /** All at once, since each is about another part or unit. */
  const edits: Readonly<Record<string, (text: string) => string>> = {
    'parts.csv': (text) =>
      `${text
        .replace(/^TB-O,.*\n/m, '')
        .replace(/^RS-H,.*\n/m, '')
        .replace(/^(GS-L,.*?,Lark,,\d+),\d+,/m, '$1,-3,')
        .replace(/^(JB-L,.*?,Lark,,\d+),\d+,/m, '$1,0,')}${[
        'XX-1,Thing,Dodo,,1,,,,,,',
        'TC-L,Other bearing,Lark,thrust_play,1,18,1,EUR,0,0,',
      ].join('\n')}\n`,
    'plan.csv': (text) => text.replace('2027-05-21', '2026-05-21').replace(/^AUK-2,A.*\n/m, ''),
  };
  beforeAll(async () => {
    changed = await planningOf(await opened((name, text) => edits[name]?.(text) ?? text));
    result = sparesOf(drawFleet(changed, { draws: 50 }));
    texts = result.messages.map(({ name, text }) => `${name}: ${text}`);
  });
  const orderOf = (part: string) => result.orders.find((order) => order.part === part);

  it('a part that only limits.csv names is counted and said to be missing', () => {
    expect(texts).toContainEqual(expect.stringContaining('TB-O: limits.csv names it'));
    expect(orderOf('TB-O')).toMatchObject({ orderBy: null, cost: null });
    expect(orderOf('TB-O')?.demandMean).toBeGreaterThan(5);
  });

  it('a part that no frame uses, a part without stock, price and lead time', () => {
    for (const said of ['no unit of frame Dodo', 'no stock given', 'no price given', 'no lead time given']) {
      expect(texts).toContainEqual(expect.stringContaining(`XX-1: ${said}`));
    }
    expect(orderOf('XX-1')).toMatchObject({
      quantity: 0,
      demandMean: 0,
      reason: 'no demand up to 2031-10-21',
    });
  });

  it('a lead time below zero is held and the order day not told; one of zero is a lead time', () => {
    expect(texts).toContainEqual(expect.stringContaining('GS-L: no lead time given'));
    expect(orderOf('GS-L')).toMatchObject({ leadTime_weeks: null, orderBy: null });
    expect(orderOf('GS-L')?.shortOn).not.toBeNull();
    const now = orderOf('JB-L');
    expect(now?.leadTime_weeks).toBe(0);
    expect(now?.orderBy).toBe(now?.shortOn);
  });

  it('two parts that renew one series: the first counts and it is said', () => {
    expect(texts).toContainEqual('Lark: thrust play is renewed by TB-L or TC-L: TB-L is counted');
  });

  it('a past overhaul and a plan that is missing', () => {
    expect(texts).toContainEqual(
      expect.stringContaining('its overhaul planned for 2026-05-21 is past and not on record'),
    );
    expect(texts).toContainEqual(
      expect.stringContaining('no next overhaul and no interval in plan.csv for its engine and bank'),
    );
    expect(decisionsOf(changed).find(({ reason }) => reason?.includes('2026-05-21'))).toMatchObject({
      date: '2026-10-21',
    });
  });

  it('no part renews runout: the rated life is told and no part counted', () => {
    expect(texts).toContainEqual(expect.stringContaining('Heron: no part in parts.csv renews runout'));
    expect(result.orders.some(({ part }) => part === 'RS-H')).toBe(false);
  });
});
