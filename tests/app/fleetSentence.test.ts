import { describe, expect, test } from 'vitest';
import { everything, fleetRows } from '../../app/fleet/fleetRows';
import { fleetRemarks, fleetSentence } from '../../app/words/fleetSentence';
import type { FleetResult } from '../../lib/analysis/types';
import { fleet, margin, marginWithoutForecast, unit } from './fixture';

function rowsOf(result: FleetResult) {
  return fleetRows(result, everything);
}

function sentence(result: FleetResult): string {
  return fleetSentence(rowsOf(result), false).replaceAll('\u00a0', ' ');
}

const two = [unit({ unit: 'A' }), unit({ unit: 'B' })];

describe('fleetSentence', () => {
  test('one unit of several is named with its series, chance and date', () => {
    expect(sentence(fleet())).toBe(
      '1 of 3 units reaches a limit with a chance over 10 % before its next planned overhaul: L-1107, thrust play, 26 % by its overhaul of 2028-02-01.',
    );
  });

  test('of two the first is the one with the higher chance', () => {
    const margins = [
      margin({ unit: 'A', chanceAtNextOverhaul: 0.2 }),
      margin({ unit: 'B', chanceAtNextOverhaul: 0.5 }),
    ];
    expect(sentence(fleet({ units: two, margins }))).toBe(
      '2 of 2 units reach a limit with a chance over 10 % before their next planned overhaul; the first is B, thrust play, 50 % by its overhaul of 2028-02-01.',
    );
  });

  test('none is said, with the highest chance', () => {
    const margins = [
      margin({ unit: 'A', chanceAtNextOverhaul: 0.05 }),
      margin({ unit: 'B', chanceAtNextOverhaul: 0.1 }),
    ];
    expect(sentence(fleet({ units: two, margins }))).toBe(
      'None of 2 units reaches a limit with a chance over 10 % before its next planned overhaul; the highest chance is that of B, thrust play, 10 % by its overhaul of 2028-02-01.',
    );
  });

  test('a single unit that does not reach a limit', () => {
    const margins = [margin({ chanceAtNextOverhaul: 0.001 })];
    expect(sentence(fleet({ units: [unit()], margins }))).toMatch(
      /^The one unit does not reach a limit .* <1 % by/,
    );
  });

  test('without limits there is no verdict, and it says what is missing', () => {
    const margins = [
      margin({ limit_mm: null, chanceNow: null, chanceByQuarter: [], chanceAtNextOverhaul: null }),
    ];
    expect(sentence(fleet({ margins }))).toBe(
      'No limit is known for any of 3 units, so there is no verdict: add limits (limits.csv) on the Records page.',
    );
  });

  test('without a plan it names the limit met soonest', () => {
    const margins = [margin({ nextOverhaulDate: null, chanceAtNextOverhaul: null })];
    expect(sentence(fleet({ units: [unit({ nextOverhaulDate: null })], margins }))).toBe(
      'No overhaul is planned (plan.csv), so no chance at the next overhaul can be given; the limit met soonest is that of L-1107, thrust play: early date 2027-11-20.',
    );
  });

  test('without a plan and without a forecast it says so', () => {
    const margins = [marginWithoutForecast({ nextOverhaulDate: null })];
    expect(sentence(fleet({ units: [unit({ nextOverhaulDate: null })], margins }))).toContain(
      'no unit has a forecast yet',
    );
  });

  test('with a plan but without any forecast it does not blame the plan, and says why', () => {
    const result = fleet({
      units: two,
      margins: two.map(({ unit: name }) => marginWithoutForecast({ unit: name })),
    });
    expect(sentence(result)).toBe(
      '2 units have a planned overhaul, but no unit has a forecast yet (the group has under 2 units with 2 readings in a run), so no chance at the next overhaul can be given.',
    );
  });

  test('a plan of one unit and the forecast of another do not make a chance', () => {
    const units = [unit({ unit: 'A', nextOverhaulDate: null }), unit({ unit: 'B' })];
    const margins = [
      margin({ unit: 'A', nextOverhaulDate: null, chanceAtNextOverhaul: null }),
      marginWithoutForecast({ unit: 'B' }),
    ];
    expect(sentence(fleet({ units, margins }))).toBe(
      'No unit with a forecast has both a planned overhaul and hours a year (plan.csv), so no chance at the next overhaul can be given; the limit met soonest is that of A, thrust play: early date 2027-11-20.',
    );
  });

  test('no unit, and no unit that passes the filters', () => {
    expect(fleetSentence([], false)).toContain('hold no unit');
    expect(fleetSentence([], true)).toBe('No unit passes the filters.');
  });
});

describe('fleetRemarks', () => {
  test('names units past a limit now, and counts those without forecast, plan or limit', () => {
    const units = ['A', 'B', 'C', 'D'].map((name) =>
      unit({ unit: name, nextOverhaulDate: name === 'C' ? null : '2028-02-01' }),
    );
    const margins = [
      margin({ unit: 'A', chanceNow: 0.95 }),
      marginWithoutForecast({ unit: 'B' }),
      margin({ unit: 'C', chanceAtNextOverhaul: null }),
      marginWithoutForecast({ unit: 'A', series: 'runout' }),
    ];
    expect(fleetRemarks(rowsOf(fleet({ units, margins })))).toEqual([
      '1 unit is past a limit now with a chance over 90 %: A.',
      '1 unit has no forecast (hatched).',
      '1 unit has a series without forecast: the chance shown (≥) is a lower bound.',
      '1 unit has no planned overhaul.',
      '1 unit has no limit, and so no verdict.',
    ]);
  });

  test('names the first of many, and counts the others', () => {
    const names = Array.from({ length: 1_500 }, (_, place) => `U-${String(place).padStart(4, '0')}`);
    const units = names.map((name) => unit({ unit: name }));
    const margins = names.map((name) => margin({ unit: name, chanceNow: 0.95 }));
    const [said = ''] = fleetRemarks(rowsOf(fleet({ units, margins })));
    expect(said).toMatch(
      /^1\s?500 units are past a limit now with a chance over 90 %: (U-\d{4}, ){7}U-\d{4} and 1\s?492 more\.$/,
    );
  });

  test('says nothing where there is nothing to say', () => {
    expect(fleetRemarks(rowsOf(fleet({ units: [unit()], margins: [margin()] })))).toEqual([]);
  });
});
