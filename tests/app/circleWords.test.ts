import { describe, expect, it, test } from 'vitest';
import { circleSentence, directionWords, offsetWords } from '../../app/words/circleWords';
import { largestGap } from '../../lib/analysis/circle/largestGap';
import type { CircleSet, ClearanceCircles, ClockReadings } from '../../lib/analysis/circle/types';
import { clockPositions } from '../../lib/stats/clock/clockPositions';
import { clockUncertainty } from '../../lib/stats/clock/clockUncertainty';

const noise_mm = 0.02;

function set(readings: ClockReadings, stage: 'found' | 'left' = 'found', date = '2024-05-01'): CircleSet {
  return {
    overhaul: 'OH-1',
    date,
    stage,
    readings,
    largestGap_mm: largestGap(readings),
    positions: clockPositions(readings),
    uncertainty: clockUncertainty(readings, noise_mm),
  };
}

const circles: ClearanceCircles = {
  characteristic: 'tip_turbine',
  sets: [],
  noise_mm,
  noiseFrom: 'fit',
  largest_mm: 1.2,
  smallest_mm: 0.6,
};
const said = (now: CircleSet, before: CircleSet | null = null, of = circles) =>
  circleSentence(of, before, now).replaceAll(/[\u202f\u00a0]/g, ' ');

test.each([
  [3, '3 o’clock'],
  [12, '12 o’clock'],
  [0.1, '12 o’clock'],
  [11.9, '12 o’clock'],
  [0.4, '12:30 o’clock'],
  [4.6, '4:30 o’clock'],
])('%f hours are %s', (clock, words) => {
  expect(directionWords(clock)).toBe(words);
});

describe('what a set says of the circle', () => {
  it('smallest gap with uncertainty and place, and nothing of limits well within them', () => {
    const words = said(set({ c12: 1, c3: 0.9, c6: 0.8, c9: 0.9 }));
    expect(words).toMatch(
      /^As found on 2024-05-01 the smallest gap round the circle is 0\.80 ± 0\.02 mm at 6 o’clock\.$/,
    );
  });

  it('past a limit by more than two standard deviations, and too near to tell', () => {
    expect(said(set({ c12: 1, c3: 0.75, c6: 0.5, c9: 0.75 }))).toContain(
      'It is below its limit of 0.600 mm.',
    );
    expect(said(set({ c12: 1, c3: 0.8, c6: 0.61, c9: 0.8 }))).toContain(
      'It cannot be told from its limit of 0.600 mm.',
    );
    expect(said(set({ c12: 1.3, c3: 1.05, c6: 0.8, c9: 1.05 }))).toContain(
      'The largest, 1.300 mm, is above its limit of 1.200 mm.',
    );
    expect(said(set({ c12: 1.19, c3: 1, c6: 0.8, c9: 1 }))).toContain(
      'The largest, 1.190 mm, cannot be told from its limit of 1.200 mm.',
    );
  });

  it('without limits there is no verdict', () => {
    const words = said(set({ c12: 2, c3: 1, c6: 0.1, c9: 1 }), null, {
      ...circles,
      largest_mm: null,
      smallest_mm: null,
    });
    expect(words).not.toContain('limit');
  });

  it('the change since it was left: of the mean and of the offset as a vector', () => {
    const before = set({ c12: 0.9, c3: 0.8, c6: 0.7, c9: 0.8 }, 'left', '2021-05-01');
    // Mean 0.8 to 0.9; offset from 0.1 up to 0.1 to the right: by 0.1 times the root of 2.
    const words = said(set({ c12: 0.9, c3: 1, c6: 0.9, c9: 0.8 }), before);
    expect(words).toContain(
      'Since it was left on 2021-05-01 the mean has changed by 0.100 mm and the offset by 0.141 mm.',
    );
  });

  it('three positions say so, two say that nothing follows; a gap below zero is a number as any', () => {
    expect(said(set({ c12: 1, c3: 0.9, c6: 0.8, c9: null }))).toContain('Three positions were read');
    expect(said(set({ c12: 1, c3: 0.9, c6: null, c9: null }))).toContain('fewer than three positions');
    expect(said(set({ c12: 0.4, c3: 0.2, c6: -0.1, c9: 0.1 }))).toContain('is −0.1');
  });

  it('an offset to either side points to where the gap is least; without one there is no direction', () => {
    expect(offsetWords(set({ c12: 0.9, c3: 0.8, c6: 0.9, c9: 1 }))).toContain('towards 3 o’clock');
    expect(offsetWords(set({ c12: 0.9, c3: 1, c6: 0.9, c9: 0.8 }))).toContain('towards 9 o’clock');
    expect(offsetWords(set({ c12: 1, c3: 1, c6: 1, c9: 1 }))).toMatch(/^0\.000.mm$/);
    expect(offsetWords(set({ c12: 1, c3: 1, c6: null, c9: null }))).toBeNull();
  });
});
