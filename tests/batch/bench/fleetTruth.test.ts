import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type GroupFit, groupKey } from '../../../lib/analysis/groupFits';
import { openAnalysis } from '../../../lib/analysis/openAnalysis';
import type { Measured, SeriesTruth } from '../../../lib/batch/bench/groupTruth';
import { frameName, writeFleetFolder } from '../../../lib/batch/bench/writeFleetFolder';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { filesOf } from '../../support/withRecords';

const folder = mkdtempSync(join(tmpdir(), 'fleet-truth-'));
afterAll(() => rmSync(folder, { recursive: true }));

let fits: ReadonlyMap<string, GroupFit> = new Map();
let truth: readonly (Readonly<Record<Measured, SeriesTruth>> & { readonly group: string })[] = [];
beforeAll(async () => {
  await writeFleetFolder(folder, { units: 160, unitsPerGroup: 80, partitioned: false });
  truth = JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8'));
  const database = await openNodeDatabase();
  const settings = { asOf: null, groupBy: 'frame' } as const;
  const connector = await database.connect();
  ({ fits } = await openAnalysis(connector, filesOf(folder), 'own', settings, async () => {}));
  await database.close();
});

const series = [
  ['thrust_play', 'thrust_play', 1],
  ['runout', 'runout', 1],
  ['tip_compressor', 'tip_compressor_mean', 2],
  ['tip_turbine', 'tip_turbine_mean', 2],
] as const;

it.each(series)(
  'the fit of %s finds the truth that the files were drawn from',
  (characteristic, name, root) => {
    for (const group of [0, 1]) {
      const fit = fits.get(groupKey(frameName(group), name))?.fit;
      const known = truth[group]?.[characteristic];
      if (fit == null || known === undefined) throw new Error(`no fit or no truth of ${name}`);
      expect(fit.units).toBe(80);
      expect(fit.readings).toBe(80 * 20);
      // Values are written to a thousandth of a millimetre: 0.0003 mm of rounding noise, far below the others.
      expect(Math.abs(fit.intercept_mm - known.intercept_mm)).toBeLessThan(4 * fit.interceptSe_mm);
      expect(Math.abs(fit.slope_mm_per_10kh - known.slope_mm_per_10kh)).toBeLessThan(
        4 * fit.slopeSe_mm_per_10kh,
      );
      // Of 80 units a spread is known to 8 %, with two levels apart to some twice that.
      expect(fit.sdNoise_mm / (known.sdReading_mm / root)).toBeCloseTo(1, 0.6);
      const start_mm = Math.hypot(known.sdStartUnit_mm, known.sdStartRun_mm);
      expect(Math.hypot(fit.sdStartUnit_mm, fit.sdStartRun_mm) / start_mm).toBeGreaterThan(0.8);
      expect(Math.hypot(fit.sdStartUnit_mm, fit.sdStartRun_mm) / start_mm).toBeLessThan(1.2);
      expect(fit.sdSlopeUnit_mm_per_10kh / known.sdSlopeUnit_mm_per_10kh).toBeGreaterThan(0.6);
      expect(fit.sdSlopeUnit_mm_per_10kh / known.sdSlopeUnit_mm_per_10kh).toBeLessThan(1.4);
    }
  },
);

it('writes the same bytes again, partitioned or not, row for row', async () => {
  const again = mkdtempSync(join(tmpdir(), 'fleet-again-'));
  await writeFleetFolder(again, { units: 160, unitsPerGroup: 80, partitioned: true });
  const parts = [0, 1].map((group) =>
    readFileSync(join(again, `frame=${frameName(group)}`, 'readings.csv'), 'utf8'),
  );
  const rows = parts.flatMap((text) => text.trimEnd().split('\n').slice(1));
  expect(rows).toEqual(readFileSync(join(folder, 'readings.csv'), 'utf8').trimEnd().split('\n').slice(1));
  rmSync(again, { recursive: true });
});
