import { expect, it } from 'vitest';
import { openAnalysis } from '../../lib/analysis/openAnalysis';
import { unitResult } from '../../lib/analysis/unitResult';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';
import { filesOf } from '../support/withRecords';

it('every unit of the demo fleet opens; a derived overhaul carries the sum that gives its hours', async () => {
  const database = await openNodeDatabase();
  const analysis = await openAnalysis(
    await database.connect(),
    filesOf('data/demo'),
    'demo',
    { asOf: null, groupBy: 'frame' },
    async () => {},
  );
  let derived = 0;
  for (const unit of analysis.units.keys()) {
    const result = await unitResult(analysis, unit);
    expect(result?.series.length, unit).toBeGreaterThan(0);
    for (const one of result?.places.derived ?? []) {
      derived++;
      const added = one.eventHours.reduce((sum, hours) => sum + hours, 0);
      expect(one.unitHoursAtFit + (one.engineHours + added - one.engineHoursAtFit)).toBeCloseTo(
        one.unitHours,
        6,
      );
    }
  }
  // Seven overhauls of the demo state engine hours only: see data/README.md.
  expect(derived).toBe(7);
  await database.close();
}, 120_000);
