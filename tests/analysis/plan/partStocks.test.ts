import { describe, expect, it } from 'vitest';
import { partStocks } from '../../../lib/analysis/plan/partStocks';
import type { PartInStock } from '../../../lib/store/questions';

const asOf = '2026-01-01';

function row(own: Partial<PartInStock>): PartInStock {
  return {
    part: 'TB',
    frame: 'Crane',
    name: null,
    resets: 'thrust_play',
    per_unit: 1,
    lead_time_weeks: 10,
    unit_cost: 100,
    currency: 'EUR',
    on_hand: 2,
    on_order: 0,
    due: null,
    ...own,
  };
}

function stock(...rows: readonly Partial<PartInStock>[]) {
  const { parts, messages } = partStocks(rows.map(row), new Set(['Crane', 'Stork']), asOf);
  const [part] = parts;
  if (part === undefined) throw new Error('no part');
  return { part, count: parts.length, texts: messages.map(({ text }) => text) };
}

describe('partStocks', () => {
  it('a complete part needs no message', () => {
    const { part, texts } = stock({});
    expect(texts).toEqual([]);
    expect(part).toMatchObject({ onHand: 2, onOrder: 0, leadTime_weeks: 10, unitCost: 100, currency: 'EUR' });
  });

  it.each([
    ['no stock', { on_hand: null }, { onHand: 0 }, 'no stock given'],
    ['no price', { unit_cost: null }, { unitCost: null, currency: null }, 'no price given'],
    ['no currency', { currency: null }, { unitCost: null, currency: null }, 'no currency given'],
    ['no lead time', { lead_time_weeks: null }, { leadTime_weeks: null }, 'no lead time given'],
    [
      'negative lead time',
      { lead_time_weeks: -3 },
      { leadTime_weeks: null },
      'a lead time of -3 weeks cannot be',
    ],
    ['on order without a day', { on_order: 2 }, { onOrder: 2, due: null }, 'without a due day: not counted'],
    [
      'on order overdue',
      { on_order: 2, due: '2025-11-30' },
      { due: asOf },
      'were due on 2025-11-30: counted as coming in on',
    ],
    ['a frame that nobody has', { frame: 'Dodo' }, {}, 'no unit of frame Dodo'],
    ['a consumable without pieces', { resets: null, per_unit: null }, {}, 'not counted'],
  ])('%s', (_, own, expected, text) => {
    const { part, texts } = stock(own);
    expect(part).toMatchObject(expected);
    expect(texts).toHaveLength(1);
    expect(texts[0]).toContain(text);
  });

  it('zero lead time is a lead time', () => {
    expect(stock({ lead_time_weeks: 0 })).toMatchObject({ part: { leadTime_weeks: 0 }, texts: [] });
  });

  it('a part of two frames has one stock; where its rows differ the cautious figure counts and is told', () => {
    const { part, count, texts } = stock({}, { frame: 'Stork', per_unit: 2, resets: 'thrust_play;runout' });
    expect(count).toBe(1);
    expect(texts).toEqual([]);
    expect([...part.perUnit]).toEqual([
      ['Crane', 1],
      ['Stork', 2],
    ]);
    expect(part.resets.get('Stork')).toEqual(['thrust_play', 'runout']);
    const differing = stock({}, { frame: 'Stork', on_hand: 5, lead_time_weeks: 12, unit_cost: 90 });
    expect(differing.part).toMatchObject({ onHand: 2, leadTime_weeks: 12, unitCost: 100 });
    expect(differing.texts.map((text) => text.split(' as ')[0])).toEqual([
      'its rows give on_hand',
      'its rows give unit_cost',
      'its rows give lead_time_weeks',
    ]);
  });

  it('several currencies give no cost', () => {
    expect(stock({}, { frame: 'Stork', currency: 'USD' })).toMatchObject({
      part: { unitCost: null },
      texts: ['its rows give several currencies (EUR, USD): no cost'],
    });
  });
});
