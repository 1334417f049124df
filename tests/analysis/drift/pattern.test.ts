import { expect, test } from 'vitest';
import { patternOf } from '../../../lib/analysis/drift/pattern';
import type { ChartedReading } from '../../../lib/analysis/drift/types';

/** Overhauls a year apart, each with a z as found and one as left. */
const readings = (pairs: readonly (readonly [number | null, number | null])[]): readonly ChartedReading[] =>
  pairs.flatMap(([found, left], index) =>
    (['found', 'left'] as const).map((stage) => ({
      overhaul: `O-${index}`,
      date: `${2015 + index}-06-01`,
      stage,
      unitHours: index * 8_000,
      runHours: stage === 'found' ? 8_000 : 0,
      workshop: null,
      value_mm: 0.03,
      foretold_mm: 0.03,
      z: stage === 'found' ? found : left,
    })),
  );

test.each([
  [
    'a rise as found and as left',
    [
      [0, 0],
      [2, 1.8],
      [2.5, 2],
    ],
    'upper',
    'persists',
  ],
  [
    'a rise as found, gone as left',
    [
      [0, 0],
      [3, 0.1],
      [2.5, -0.3],
    ],
    'upper',
    'vanishes',
  ],
  [
    'a fall as found and as left',
    [
      [0, 0],
      [-2, -1.8],
      [-2.5, -2],
    ],
    'lower',
    'persists',
  ],
  [
    'a rise looked at as a fall',
    [
      [0, 0],
      [2, 1.8],
      [2.5, 2],
    ],
    'lower',
    'cannot be told',
  ],
  [
    'a rise as found, half gone as left',
    [
      [0, 0],
      [2, 1.2],
    ],
    'upper',
    'cannot be told',
  ],
  [
    'nothing read as left',
    [
      [0, 0],
      [3, null],
    ],
    'upper',
    'cannot be told',
  ],
] as const)('%s: %#', (_, pairs, side, pattern) => {
  expect(patternOf({ readings: readings(pairs) }, side, '2016-01-01', '2026-01-01')).toBe(pattern);
});

test('readings from before the shift and from after its latest signal do not count', () => {
  const series = {
    readings: readings([
      [0, 5],
      [3, 0],
      [3, 0],
    ]),
  };
  expect(patternOf(series, 'upper', '2016-01-01', '2017-12-31')).toBe('vanishes');
  expect(patternOf(series, 'upper', '2015-01-01', '2017-12-31')).toBe('persists');
  const quietened = {
    readings: readings([
      [0, 0],
      [4, 0],
      [0, 3],
    ]),
  };
  expect(patternOf(quietened, 'upper', '2016-01-01', '2016-12-31')).toBe('vanishes');
  expect(patternOf(quietened, 'upper', '2016-01-01', '2017-12-31')).toBe('persists');
});
