import { expect, it } from 'vitest';
import { calibration } from '../../../lib/analysis/calibration/calibration';
import { falseSignals } from '../../../lib/batch/calibrate/falseSignals';

it('fleets without drift raise the budget’s false signals: a small run of the calibration script', () => {
  const fleets = 14;
  const years = 12;
  for (const { budget_per_year, found_per_year } of falseSignals(50, years, fleets, [2, 6])) {
    // Signals come in pairs of charts, so their number varies by about twice that of a Poisson count.
    const expected = budget_per_year * years * fleets;
    const spread = 3.5 * Math.sqrt(2 * expected);
    expect(Math.abs(found_per_year * years * fleets - expected)).toBeLessThan(spread);
  }
}, 60_000);

it('what the script wrote keeps to what is claimed of it', () => {
  for (const { budget_per_year, found_per_year } of calibration.falseSignals.rows)
    expect(Math.abs(found_per_year / budget_per_year - 1)).toBeLessThan(0.2);
  expect(calibration.falseSignals).toMatchObject({ units: 50, years: 12, fleets: 200 });
  for (const { charts, spread, trend } of calibration.detection.rows)
    expect(charts).toBeGreaterThanOrEqual(Math.max(spread, trend));
  for (const { crossing, reading } of calibration.coverage)
    for (const share of [crossing, reading]) expect(Math.abs(share - 0.8)).toBeLessThan(0.03);
});
