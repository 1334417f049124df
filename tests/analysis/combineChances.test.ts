import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceByQuarter, characteristicOf, combineChances } from '../../lib/analysis/combineChances';
import type { MarginRow } from '../../lib/analysis/types';
import { margin, marginWithoutForecast } from '../app/fixture';

const codes = ['thrust_play', 'runout', 'tip_compressor', 'tip_turbine'];
const series = [
  'thrust_play',
  'runout',
  'tip_compressor_largest',
  'tip_compressor_smallest',
  'tip_turbine_mean',
];

function withChance(name: string, chance: number): MarginRow {
  return margin({
    series: name,
    chanceNow: chance,
    chanceAtNextOverhaul: chance,
    chanceByQuarter: [chance],
  });
}

describe('characteristicOf', () => {
  test('drops the suffix of a four-clock series and keeps a single series', () => {
    expect(characteristicOf('tip_compressor_smallest', codes)).toBe('tip_compressor');
    expect(characteristicOf('thrust_play', codes)).toBe('thrust_play');
  });

  test('prefers the longest code, and takes an unknown series as its own characteristic', () => {
    expect(characteristicOf('gap_mean_offset', ['gap', 'gap_mean'])).toBe('gap_mean');
    expect(characteristicOf('seal_gap', codes)).toBe('seal_gap');
  });
});

describe('combineChances', () => {
  test('two characteristics of 20 % and 10 % give 28 %', () => {
    const outlook = combineChances([withChance('thrust_play', 0.2), withChance('runout', 0.1)], codes);
    expect(outlook.chanceAtNextOverhaul).toBeCloseTo(0.28, 12);
    expect(outlook.chanceNow).toBeCloseTo(0.28, 12);
    expect(chanceByQuarter(outlook, codes)[0]).toBeCloseTo(0.28, 12);
  });

  test('two series of one characteristic count once, with the larger chance', () => {
    const margins = [withChance('tip_compressor_largest', 0.2), withChance('tip_compressor_smallest', 0.3)];
    expect(combineChances(margins, codes).chanceAtNextOverhaul).toBeCloseTo(0.3, 12);
  });

  test('small chances keep their digits', () => {
    const margins = [withChance('thrust_play', 1e-12), withChance('runout', 1e-12)];
    expect((combineChances(margins, codes).chanceAtNextOverhaul ?? 0) / 2e-12).toBeCloseTo(1, 6);
  });

  test('by quarter they are combined as at one day', () => {
    const far = margin({ series: 'thrust_play', chanceByQuarter: [0, 0.25, 0.5] });
    const near = margin({ series: 'runout', chanceByQuarter: [0, 0.2, 0.4] });
    const undated = margin({ series: 'tip_turbine_mean', chanceByQuarter: [] });
    const chances = chanceByQuarter(combineChances([far, near, undated], codes), codes);
    for (const [quarter, chance] of [0, 1 - 0.75 * 0.8, 1 - 0.5 * 0.6].entries())
      expect(chances[quarter]).toBeCloseTo(chance, 12);
    expect(chances).toHaveLength(3);
  });

  test('a margin without a limit is left out, one without a forecast is named', () => {
    const outlook = combineChances(
      [
        margin({ series: 'runout', limit_mm: null }),
        marginWithoutForecast(),
        withChance('tip_turbine_mean', 0.1),
      ],
      codes,
    );
    expect(outlook.chanceAtNextOverhaul).toBeCloseTo(0.1, 12);
    expect(outlook.withoutForecast).toEqual(['thrust_play']);
    expect(outlook.deciding?.series).toBe('tip_turbine_mean');
  });

  test('without any forecast there is no chance, and the limited margin stands for its reason', () => {
    const outlook = combineChances([marginWithoutForecast()], codes);
    expect(outlook.chanceAtNextOverhaul).toBeNull();
    expect(chanceByQuarter(outlook, codes)).toEqual([]);
    expect(outlook.deciding?.reason).toContain('under 2 units');
    expect(combineChances([], codes).deciding).toBeNull();
  });

  test('without a plan the soonest early point decides', () => {
    const late = margin({ chanceAtNextOverhaul: null, hoursEarly: 9000 });
    const soon = margin({ series: 'runout', chanceAtNextOverhaul: null, hoursEarly: 100 });
    const outlook = combineChances([late, soon], codes);
    expect(outlook.deciding?.series).toBe('runout');
    expect(outlook.chanceAtNextOverhaul).toBeNull();
  });

  // Whole thousandths: a random double is almost always next to zero.
  const someChance = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);
  const someMargins = fc
    .uniqueArray(fc.tuple(fc.constantFrom(...series), someChance), {
      minLength: 1,
      maxLength: 5,
      selector: ([name]) => name,
    })
    .map((pairs) => pairs.map(([name, chance]) => withChance(name, chance)));
  const chanceOf = (margins: readonly MarginRow[]) =>
    combineChances(margins, codes).chanceAtNextOverhaul ?? -1;

  test('property: no less than the largest chance, no more than their sum or 1', () => {
    fc.assert(
      fc.property(someMargins, (margins) => {
        const all = margins.map((one) => one.chanceAtNextOverhaul ?? 0);
        const sum = all.reduce((total, chance) => total + chance, 0);
        expect(chanceOf(margins)).toBeGreaterThanOrEqual(Math.max(...all) - 1e-12);
        expect(chanceOf(margins)).toBeLessThanOrEqual(Math.min(1, sum) + 1e-12);
      }),
      { seed: 11 },
    );
  });

  test('property: the order of the margins does not matter', () => {
    fc.assert(
      fc.property(someMargins, (margins) => {
        expect(chanceOf([...margins].reverse())).toBeCloseTo(chanceOf(margins), 12);
      }),
      { seed: 12 },
    );
  });

  test('property: a further characteristic never lowers the chance', () => {
    fc.assert(
      fc.property(someMargins, someChance, (margins, chance) => {
        const more = chanceOf([...margins, withChance('seal_gap', chance)]);
        expect(more).toBeGreaterThanOrEqual(chanceOf(margins) - 1e-12);
        expect(more).toBeCloseTo(1 - (1 - chanceOf(margins)) * (1 - chance), 10);
      }),
      { seed: 13 },
    );
  });
});
