import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvParse } from 'd3-dsv';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PostgresServer } from '../../../lib/batch/warehouse/servers/postgresServer';
import type { Warehouse } from '../../../lib/batch/warehouse/Warehouse';
import type { WarehouseSettings } from '../../../lib/batch/warehouse/warehouseSettings';
import { FleetBesideWarehouse } from './FleetBesideWarehouse';
import { loadedPostgres, postgres } from './warehouses';

/** Commands of the whole fleet one after another; a busy machine takes its time. */
const commandTime_ms = 180_000;

let fleet: FleetBesideWarehouse;
beforeAll(async () => {
  fleet = await FleetBesideWarehouse.open();
});
afterAll(() => fleet.close());

/** Difference that the last digit written may make. */
function lastDigit(column: string, value: number): number {
  if (/^chance|probability$|^q_value$|^mean$|^p\d+$/.test(column)) return 1.01e-6;
  return column.startsWith('hours') ? 0.101 : 1.01e-7 * Math.abs(value);
}

/** The same texts and, but for the last digit written, the same numbers. */
function expectSameFile(path: string, expected: string): void {
  const [ours, theirs] = [path, expected].map((one) => csvParse(readFileSync(one, 'utf8')));
  expect(ours?.columns).toEqual(theirs?.columns);
  expect(ours?.length).toBe(theirs?.length);
  for (const [row, cells] of (theirs ?? []).entries())
    for (const [column, cell = ''] of Object.entries(cells)) {
      const own = ours?.[row]?.[column];
      if (own === cell) continue;
      const difference = Math.abs(Number(own) - Number(cell));
      expect(difference, `${path} ${row} ${column}: ${own}, ${cell}`).toBeLessThan(
        lastDigit(column, Number(cell)),
      );
    }
}

describe.skipIf(postgres === null)('PostgreSQL', () => {
  let server: PostgresServer;
  let settings: WarehouseSettings;
  beforeAll(async () => {
    server = await fleet.withAll((all) => loadedPostgres(fleet.servers.path, postgres ?? '', all));
    settings = server.settings;
  });
  afterAll(() => server.stop());

  /** What is refused after a change, which is taken back. */
  async function refusedAfter(change: string): Promise<string> {
    const client = new Client({ ...server.settings });
    await client.connect();
    await client.query(
      'CREATE TABLE kept_readings AS SELECT * FROM readings; CREATE TABLE kept_overhauls AS SELECT * FROM overhauls',
    );
    await client.query(change);
    try {
      return await fleet.refusal(settings);
    } finally {
      await client.query(
        `TRUNCATE readings, overhauls; INSERT INTO readings SELECT * FROM kept_readings; INSERT INTO overhauls SELECT * FROM kept_overhauls;
         DROP TABLE kept_readings, kept_overhauls; UPDATE units SET frame = 'Wren' WHERE frame = 'Crow'`,
      );
      await client.end();
    }
  }

  it.each([
    [
      'a repeated reading',
      "INSERT INTO readings SELECT * FROM readings WHERE characteristic = 'runout' LIMIT 3",
      /not clean: \d+ given twice/,
    ],
    [
      'a repeated clock position',
      `INSERT INTO readings SELECT * FROM readings WHERE clock = '12' LIMIT 1`,
      /given twice/,
    ],
    [
      'a reading of no overhaul',
      `INSERT INTO readings VALUES ('T-0000000', 'none', 'runout', 'found', NULL, 0.02)`,
      /1 of an overhaul, unit or characteristic/,
    ],
    [
      'a characteristic that nobody knows',
      `UPDATE readings SET characteristic = 'colour' WHERE characteristic = 'runout'`,
      /\d+ of an overhaul, unit or characteristic/,
    ],
    [
      'no value',
      `UPDATE readings SET value_mm = NULL, lower_mm = NULL WHERE characteristic = 'runout' AND unit = 'T-0000000'`,
      /20 without a usable value/,
    ],
    [
      'a value that is no number',
      `UPDATE readings SET value_mm = 'NaN', lower_mm = NULL WHERE characteristic = 'runout' AND unit = 'T-0000000'`,
      /20 without a usable value/,
    ],
    [
      'crossed ends',
      `UPDATE readings SET lower_mm = 2, upper_mm = 1 WHERE characteristic = 'runout' AND unit = 'T-0000000'`,
      /20 with lower_mm above upper_mm/,
    ],
    [
      'a negative length',
      `UPDATE readings SET value_mm = -value_mm WHERE characteristic = 'runout' AND unit = 'T-0000001' AND lower_mm IS NULL`,
      /\d+ below zero/,
    ],
    [
      'an unknown stage',
      `UPDATE readings SET stage = 'new' WHERE characteristic = 'runout' AND unit = 'T-0000000'`,
      /20 with another stage/,
    ],
    [
      'a missing clock position',
      `UPDATE readings SET clock = NULL WHERE clock = '3' AND unit = 'T-0000000'`,
      /with a clock position where there is one reading/,
    ],
    [
      'other hours of an overhaul',
      `UPDATE overhauls SET unit_hours = unit_hours + 1 WHERE unit = 'T-0000000'`,
      /1 of 60 units differ between --data and .*: T-0000000/,
    ],
    [
      'another part fitted',
      `UPDATE overhauls SET fitted = 'TB-1' WHERE unit IN ('T-0000002', 'T-0000006')`,
      /2 of 60 units differ .*: T-0000002, T-0000006/,
    ],
    [
      'another frame',
      `UPDATE units SET frame = 'Crow' WHERE unit = 'T-0000002'`,
      /1 of 60 units differ .*: T-0000002/,
    ],
    [
      'an overhaul less',
      `DELETE FROM overhauls WHERE unit = 'T-0000001' AND date = (SELECT max(date) FROM overhauls WHERE unit = 'T-0000001')`,
      /T-0000001/,
    ],
  ])('refuses %s with a sentence', async (_, change, sentence) => {
    expect(await refusedAfter(change)).toMatch(sentence);
  });

  it('does not take a unit whose rows lie in two partitions for two units', async () => {
    const twice = (warehouse: Warehouse): Warehouse => ({
      ...warehouse,
      histories: async (question) => {
        const histories = await warehouse.histories(question);
        return [...histories, ...histories.filter(({ unit }) => unit === 'T-0000009')];
      },
    });
    expect(await fleet.refusal(settings, twice)).toMatch(/1 of 60 units differ .*: T-0000009/);
  });

  it('does not go on with fewer rows than the warehouse has', async () => {
    const short = (warehouse: Warehouse): Warehouse => ({
      ...warehouse,
      async *runStatistics(question) {
        for await (const batch of warehouse.runStatistics(question)) yield batch.slice(1);
      },
    });
    expect(await fleet.refusal(settings, short)).toMatch(/has \d+ readings, but its statistics are of \d+/);
  });

  it(
    'writes the files that come from readings, but for signals.csv',
    async () => {
      const well = await fleet.analyse(settings);
      expect(well).toMatchObject({ status: 0, stderr: '', written: ['out'] });
      const byReadings = await fleet.analyse(null);
      for (const table of ['fits', 'margins', 'sisters', 'demand', 'orders'])
        expectSameFile(join(well.out, `${table}.csv`), join(byReadings.out, `${table}.csv`));
      expect(readdirSync(byReadings.out)).toContain('signals.csv');
      expect(readdirSync(well.out)).not.toContain('signals.csv');
    },
    commandTime_ms,
  );

  it(
    'stops with a sentence when the server ends while it answers, and then writes nothing',
    async () => {
      const ending = (warehouse: Warehouse): Warehouse => ({
        ...warehouse,
        async *runStatistics(question) {
          for await (const batch of warehouse.runStatistics(question)) {
            await server.kill();
            yield batch;
          }
        },
      });
      expect(await fleet.refusal(settings, ending)).toMatch(
        /^the PostgreSQL warehouse postgres at 127\.0\.0\.1:\d+ gave no full answer \(.+\): see that it runs, then start again$/,
      );
      const after = await fleet.analyse(settings);
      expect(after.status).toBe(1);
      expect(after.stderr).toMatch(/gave no full answer \(.*ECONNREFUSED.*\): see that it runs/);
      expect(after.written).toEqual([]);
    },
    commandTime_ms,
  );
});
