import { expect, it } from 'vitest';
import { calibration } from '../../../lib/analysis/calibration/calibration';
import { benchSlips } from '../../../lib/batch/calibrate/benchSlips';

it('slips of more than 5 noise SDs are questioned, right readings are not: a small run of the calibration script', () => {
  const { rows, rightReadings, rightQuestioned } = benchSlips(6, 14);
  const table = rows.map(({ slip, slips, caught }) => ({ slip, slips, caught, share: caught / slips }));
  console.table(table);
  console.log(`right readings ${rightReadings}, questioned ${rightQuestioned}`);
  const slips = rows.reduce((sum, row) => sum + row.slips, 0);
  const caught = rows.reduce((sum, row) => sum + row.caught, 0);
  expect(slips).toBeGreaterThan(700);
  expect(caught / slips).toBeGreaterThanOrEqual(0.95);
  for (const { slip, share } of table) expect(share, slip).toBeGreaterThan(0.9);
  expect(rightReadings).toBe(1008);
  expect(rightQuestioned / rightReadings).toBeLessThan(0.02);
}, 60_000);

it('what the script wrote keeps to what is claimed of it, kind by kind', () => {
  const { rows, rightReadings, rightQuestioned } = calibration.benchSlips;
  for (const { slip, slips, caught } of rows) expect(caught / slips, slip).toBeGreaterThanOrEqual(0.95);
  expect(rightQuestioned / rightReadings).toBeLessThan(0.02);
  expect(rightReadings).toBeGreaterThan(10_000);
});
