import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { GroupFit } from '../../../lib/analysis/groupFits';
import { type Analysis, openAnalysis } from '../../../lib/analysis/openAnalysis';
import type { RunSource } from '../../../lib/analysis/RunSource';
import { sisterGroups } from '../../../lib/analysis/sisters/sisterGroups';
import { openWarehouse } from '../../../lib/batch/warehouse/openWarehouse';
import { type ReadingsCounted, runsOfWarehouse } from '../../../lib/batch/warehouse/runsOfWarehouse';
import type { WarehouseSettings } from '../../../lib/batch/warehouse/warehouseSettings';
import type { InputFile } from '../../../lib/records/importReport';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { filesOf } from '../../support/withRecords';
import { expectAgreement, type Tolerance } from './expectAgreement';
import { partResetFleet } from './partResetFleet';
import {
  clickHouse,
  loadedClickHouse,
  loadedPostgres,
  postgres,
  serverFolder,
  tellWhatIsSkipped,
} from './warehouses';

tellWhatIsSkipped();

const relative = 1e-9;
const exactZero: Tolerance = { relative, smallest: () => 0 };
/**
 * Centred sums of a run with readings of one value are zero but for the last bits of a mean near 1, times a difference near 1:
 * a few times 2^-52, where the square of a gauge's noise is 1e-4.
 */
const centredSums: Tolerance = { relative, smallest: () => 1e-15 };
/**
 * Chances are shares of 1, so that 1e-9 of one is 1e-9 itself; 1e-11 mm or h is nothing but the rest of a difference. A
 * posterior passes on the last bit of a sum some thousand times larger, and the tail of a chance that again: two openings
 * of the same files on several threads differ in the tenth digit of a chance, too.
 */
const results: Tolerance = {
  relative,
  smallest: (name) => (/^chance|^q$|^tailProbability$/.test(name) ? relative : 1e-11),
};

/** A day before which a part of the demo fleet's overhauls lies. */
const earlierDay = '2022-06-30';

const fleets: readonly (readonly [
  name: string,
  files: readonly InputFile[],
  days: readonly (string | null)[],
])[] = [
  ['the demo fleet', filesOf('data/demo'), [null, earlierDay]],
  ['200 made-up units with part resets', partResetFleet(200), [null]],
];

function statisticsOf({ statistics }: GroupFit) {
  const { unitNames, runNames, readings, logWeightSum, count, n, minX, maxX, sx, sy } = statistics;
  return { unitNames, runNames, readings, logWeightSum, count, n, minX, maxX, sx, sy };
}

for (const [fleet, files, days] of fleets) {
  describe(fleet, () => {
    const folder = serverFolder();
    const stops: (() => Promise<void>)[] = [];
    const warehouses = new Map<string, WarehouseSettings>();
    let database: Database;
    const own = new Map<string | null, Analysis>();

    const open = async (of: readonly InputFile[], asOf: string | null, runs?: RunSource) =>
      openAnalysis(
        await database.connect(),
        of,
        'own',
        { asOf, groupBy: 'frame', ...(runs === undefined ? {} : { runs }) },
        async () => {},
      );

    const throughWarehouse = async (kind: string, asOf: string | null) => {
      const warehouse = await openWarehouse(warehouses.get(kind) as WarehouseSettings);
      let counted: ReadingsCounted | undefined;
      const source = runsOfWarehouse(warehouse, (counts) => {
        counted = counts;
      });
      const others = files.filter(({ name }) => name !== 'readings.csv');
      const analysis = await open(others, asOf, source);
      await warehouse.close();
      return { analysis, counted: counted as unknown as ReadingsCounted };
    };

    beforeAll(async () => {
      database = await openNodeDatabase();
      for (const day of days) own.set(day, await open(files, day));
      const { connector } = own.get(null) as Analysis;
      if (postgres !== null) {
        const server = await loadedPostgres(folder.path, postgres, connector);
        stops.push(server.stop);
        warehouses.set('postgresql', server.settings);
      }
      if (clickHouse !== null) {
        const servers = await loadedClickHouse(folder.path, clickHouse, connector);
        stops.push(servers.stop);
        warehouses.set('clickhouse', servers.settings);
      }
    });
    afterAll(async () => {
      await Promise.all(stops.map((stop) => stop()));
      await database?.close();
      folder.remove();
    });

    for (const [kind, program] of [
      ['postgresql', postgres],
      ['clickhouse', clickHouse],
    ] as const) {
      describe.skipIf(program === null)(`from ${kind}`, () => {
        for (const asOf of days) {
          it(`has the statistics, fits, margins and sisters of the readings path ${asOf ?? 'on the latest day'}`, async () => {
            const expected = own.get(asOf) as Analysis;
            const { analysis, counted } = await throughWarehouse(kind, asOf);
            expect([...analysis.fits.keys()]).toEqual([...expected.fits.keys()]);
            for (const [key, fit] of analysis.fits) {
              const ours = expected.fits.get(key) as GroupFit;
              expectAgreement(statisticsOf(fit), statisticsOf(ours), exactZero, key);
              for (const sum of ['sxxCentred', 'sxyCentred', 'syyCentred'] as const)
                expectAgreement(fit.statistics[sum], ours.statistics[sum], centredSums, `${key} ${sum}`);
            }
            expectAgreement(analysis.fleet.fits, expected.fleet.fits, results, 'fits');
            expectAgreement(analysis.fleet.margins, expected.fleet.margins, results, 'margins');
            const sisters = sisterGroups(analysis.fits.values()).map(({ rows }) => rows);
            expectAgreement(
              sisters,
              sisterGroups(expected.fits.values()).map(({ rows }) => rows),
              results,
              'sisters',
            );
            const unused = [...counted.unused.values()].reduce((sum, readings) => sum + readings, 0);
            expect(counted.used + unused).toBe(expected.imported.readingsUsed);
            expect(analysis.fleet.margins.length).toBeGreaterThan(100);
          });
        }
      });
    }
  });
}
