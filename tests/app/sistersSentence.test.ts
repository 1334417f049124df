import { describe, expect, it } from 'vitest';
import { gaugeSentence, noiseWords } from '../../app/words/gaugeSentence';
import { differenceSentence, otherFindings, sistersSentence } from '../../app/words/sistersSentence';
import type { SisterGroup, SisterRow, SistersResult, StartRow } from '../../lib/analysis/sisters/types';
import { builtInCharacteristics } from '../../lib/records/characteristics';
import { pooledRepeatability } from '../../lib/stats/repeatability/repeatability';
import { interval } from '../support/interval';

function rate(unit: string, ratio: number | null, q: number, series = 'thrust_play'): SisterRow {
  return {
    unit,
    group: 'Lark',
    series,
    readings: 9,
    q,
    rate: {
      ratio: ratio === null ? null : interval(ratio),
      reason: ratio === null ? 'the sisters’ rate may be zero' : null,
      difference_mm_per_10kh: interval((ratio ?? 0.7) - 1),
      tailProbability: q,
    },
  };
}
const start = (unit: string, difference_mm: number, q: number): StartRow => ({
  unit,
  group: 'Lark',
  series: 'thrust_play',
  own_mm: 0.3 + difference_mm,
  sd_mm: 0.01,
  difference_mm,
  interval_mm: interval(difference_mm),
  outside: 'none',
  tailProbability: q,
  q,
  readings: 9,
});
function group(changes: Partial<SisterGroup>): SisterGroup {
  return {
    group: 'Lark',
    series: 'thrust_play',
    slope_mm_per_10kh: 0.05,
    rows: [],
    startRows: [],
    rates: null,
    starts: null,
    reason: null,
    ...changes,
  };
}
const result = (...groups: SisterGroup[]): SistersResult => ({
  asOf: '2026-01-01',
  source: 'own',
  groupBy: 'frame',
  groups,
});
const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, ' ');
const said = (of: SisterGroup, measure: 'rate' | 'start' = 'rate') =>
  plain(sistersSentence(result(of), 'thrust_play', measure, builtInCharacteristics));

describe('the answer of Sisters', () => {
  it('names the two furthest with interval and q, slow ones by how many times as well, and counts the rest', () => {
    const rows = [rate('A', 1.4, 0.02), rate('B', 0.5, 0.04), rate('C', 1.2, 0.09), rate('D', 3, 0.11)];
    expect(said(group({ rows }))).toBe(
      'In thrust play, B wears 0.50 times as fast as its sisters (80 %: 0.40 to 0.60; q 0.040); A wears 1.40 times as fast as its sisters (80 %: 1.30 to 1.50; q 0.020); 1 other unit differs less.',
    );
  });

  it('without a ratio says the difference, without a finding the count, without a comparison the reason', () => {
    expect(said(group({ rows: [rate('A', null, 0.01)] }))).toBe(
      'In thrust play, A wears 0.300 mm per 10 000 h less than its sisters (80 % of the difference: −0.400 mm per 10 000 h to −0.200 mm per 10 000 h; q 0.010).',
    );
    expect(said(group({ rows: [rate('A', 1, 0.8)] }))).toBe(
      'In thrust play no unit of 1 unit can be told from its sisters.',
    );
    expect(said(group({ reason: 'the group has 1 unit' }))).toBe(
      'No unit can be compared in thrust play: the group has 1 unit.',
    );
  });

  it('speaks of start levels where these are compared', () => {
    const of = group({ rows: [rate('A', 3, 0.001)], startRows: [start('B', -0.12, 0.03), start('C', 0, 1)] });
    expect(said(of, 'start')).toBe('In thrust play, B starts 0.120 mm below its sisters (q 0.030).');
    expect(said(group({ startRows: [start('C', 0, 1), start('D', 0, 1)] }), 'start')).toBe(
      'In thrust play no unit of 2 units starts further out than sisters do among themselves.',
    );
    expect(said(group({ rows: [rate('A', 3, 0.001)] }), 'start')).toContain('needs three units');
  });

  it('leads to the furthest finding of each other series', () => {
    const of = result(
      group({ rows: [rate('A', 3, 0.001)] }),
      group({ series: 'runout', rows: [rate('B', 1.3, 0.05, 'runout'), rate('C', 1.9, 0.05, 'runout')] }),
    );
    expect(otherFindings(of, 'thrust_play', 'rate').map(({ unit }) => unit)).toEqual(['C']);
    expect(otherFindings(of, 'thrust_play', 'start')).toEqual([]);
  });
});

describe('differences and gauge in words', () => {
  it('names levels outside, or how many keep within', () => {
    const level = { count: 3, mean: 1.2, lower: -1, upper: 1 };
    const by = { factor: 'duty', compared: 'wear rate', series: 'runout', reason: null } as const;
    expect(differenceSentence({ ...by, levels: [{ ...level, level: 'high', outside: 'upper' }] })).toBe(
      'By duty, wear rate: high lies high (mean 1.20 SD of 3 units).',
    );
    const within = { ...level, mean: 0, outside: 'none' } as const;
    expect(
      differenceSentence({
        ...by,
        levels: [
          { ...within, level: 'high' },
          { ...within, level: 'low' },
        ],
      }),
    ).toContain('that all 2 duties keep at once');
  });

  it('repeatability of no pairs, of equal pairs, of shifted ones, and the noise of fits', () => {
    const gauge = (differences_mm: readonly number[]) => {
      const { pooled, workshops } = pooledRepeatability([{ workshop: 'Dunlin', differences_mm }]);
      const pairs = differences_mm.length;
      const own = workshops.map((one) => ({ ...one, pairs }));
      return { series: 'thrust_play', pairs, pooled, workshops: own };
    };
    const words = (differences: readonly number[], noise: string | null = null) =>
      plain(gaugeSentence('thrust play', gauge(differences), noise));
    expect(words([0.01, -0.01, 0.01, -0.01], '0.009 mm')).toMatch(
      /^In thrust play one reading repeats within 0\.007 mm \(standard deviation; 90 %: 0\.\d+ mm to 0\.\d+ mm\), from 4 pairs .* The fits of the groups put the noise of one reading at 0\.009 mm\.$/,
    );
    expect(words([0, 0])).toContain('all 2 pairs of one state are the same');
    expect(words([0])).toContain('both readings of the one pair of one state are the same');
    expect(words([0.05, 0.06, 0.05, 0.06])).toContain('At Dunlin readings as left lie 0.055 mm above');
    expect(plain(noiseWords([0.011, null, 0.014]) ?? '')).toBe('0.011 mm to 0.014 mm');
    expect(noiseWords([null])).toBeNull();
  });
});
