import { expect, it, test } from 'vitest';
import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import { processPerformance } from '../../../lib/stats/charts/processPerformance';

/** Values with exactly the given mean and standard deviation (divisor n - 1). */
function valuesWith(mean: number, sd: number, n: number): readonly number[] {
  const centred = Array.from({ length: n }, (_, k) => k - (n - 1) / 2);
  const spread = Math.sqrt(centred.reduce((sum, value) => sum + value * value, 0) / (n - 1));
  return centred.map((value) => mean + (sd * value) / spread);
}

test('the index of the NIST handbook 6.1.6: mean 16, SD 2, limits 8 and 20', () => {
  const result = processPerformance(valuesWith(16, 2, 50), { lower: 8, upper: 20 });
  expect(result).toMatchObject({ nearer: 'upper', readings: 50 });
  expect(result?.ppk).toBeCloseTo(0.6667, 4);
  // With the lower limit alone its index is 1.3333.
  expect(processPerformance(valuesWith(16, 2, 50), { lower: 8, upper: null })?.ppk).toBeCloseTo(1.3333, 4);
});

test.each([
  [8, 0.8],
  [20, 1.33],
  [60, 0.4],
])('the 90 %% interval of %d readings of a normal process holds its index of %d', (n, index) => {
  const { normal } = seededDraws(n);
  const samples = 8000;
  let held = 0;
  for (let sample = 0; sample < samples; sample++) {
    const values = Array.from({ length: n }, normal);
    const result = processPerformance(values, { lower: -3 * index, upper: null });
    if (result !== null && result.lower <= index && index <= result.upper) held++;
  }
  // The approximation's own error is under 2 % from 8 readings on; 8000 samples add 0.3 %.
  expect(Math.abs(held / samples - 0.9)).toBeLessThan(0.025);
});

it('mirrors with its values, and has no index of few or equal values or without a limit', () => {
  const values = valuesWith(0.31, 0.02, 12);
  const one = processPerformance(values, { lower: 0.2, upper: 0.36 });
  const mirrored = processPerformance(
    values.map((value) => -value),
    { lower: -0.36, upper: -0.2 },
  );
  expect(mirrored?.ppk).toBeCloseTo(one?.ppk ?? 0, 12);
  expect([one?.nearer, mirrored?.nearer]).toEqual(['upper', 'lower']);
  expect(processPerformance(values.slice(0, 4), { lower: 0, upper: 1 })).toBeNull();
  expect(processPerformance([1, 1, 1, 1, 1], { lower: 0, upper: 2 })).toBeNull();
  expect(processPerformance(values, { lower: null, upper: null })).toBeNull();
});
