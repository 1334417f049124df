import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import {
  createWarehouseRunsSql,
  mergedRunsSql,
  warehouseRuns,
} from '../../../lib/batch/warehouse/mergedRunsSql';
import { statisticsColumns } from '../../../lib/batch/warehouse/Warehouse';
import type { Connector, Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { queryRows } from '../../../lib/store/queryRows';
import { addNoiseVarianceSql, createNoiseVariancesSql } from '../../../lib/store/sql/noiseVariances';

interface Reading {
  readonly x: number;
  readonly y: number;
  readonly spread: number;
}

const sum = <T>(of: readonly T[], value: (one: T) => number) =>
  of.reduce((total, one) => total + value(one), 0);

/** Weighted statistics straight from their definition. */
function direct(readings: readonly Reading[], noise: number) {
  const weight = ({ spread }: Reading) => noise / (noise + spread);
  const n = sum(readings, weight);
  const mean_x = sum(readings, (one) => weight(one) * one.x) / n;
  const mean_y = sum(readings, (one) => weight(one) * one.y) / n;
  return {
    count: readings.length,
    n,
    log_weight_sum: sum(readings, (one) => Math.log(weight(one))),
    mean_x,
    mean_y,
    min_x: Math.min(...readings.map(({ x }) => x)),
    max_x: Math.max(...readings.map(({ x }) => x)),
    weighted: readings.some(({ spread }) => spread > 0) ? 1 : 0,
    sxx_c: sum(readings, (one) => weight(one) * (one.x - mean_x) ** 2),
    sxy_c: sum(readings, (one) => weight(one) * (one.x - mean_x) * (one.y - mean_y)),
    syy_c: sum(readings, (one) => weight(one) * (one.y - mean_y) ** 2),
  };
}

/** A row of the warehouse for the readings of one spread. */
function part(readings: readonly Reading[], spread: number): string {
  const plain = direct(
    readings.map((one) => ({ ...one, spread: 0 })),
    1,
  );
  const { count, mean_x, mean_y, sxx_c, sxy_c, syy_c, min_x, max_x } = plain;
  const numbers = [0, spread, count, mean_x, mean_y, sxx_c, sxy_c, syy_c, min_x, max_x, count];
  return `('U', 'runout', ${numbers.map((value) => `${value}::DOUBLE`).join(', ')})`;
}

const reading = fc.record({
  x: fc.double({ min: 0, max: 3, noNaN: true }),
  y: fc.double({ min: 0.01, max: 2, noNaN: true }),
  spread: fc.constantFrom(0, 0, 1e-5, 3e-4, 0.002),
});
const columns = [
  'count',
  'n',
  'log_weight_sum',
  'mean_x',
  'mean_y',
  'min_x',
  'max_x',
  'weighted',
  'sxx_c',
  'sxy_c',
  'syy_c',
] as const;
const row = z.record(z.enum(columns), z.number());

describe('runs put together from their parts of one spread', () => {
  let database: Database;
  let connector: Connector;
  beforeAll(async () => {
    database = await openNodeDatabase();
    connector = await database.connect();
    await connector.run(`CREATE TABLE sisters AS SELECT 'U' AS unit, 'G' AS "group", 0 AS place`);
  });
  afterAll(() => database.close());

  it('have the weighted statistics of all their readings', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(reading, { minLength: 1, maxLength: 12 }),
        fc.constantFrom(null, 2e-5, 0.004),
        async (readings, variance) => {
          await connector.run(`${createWarehouseRunsSql}; ${createNoiseVariancesSql('sisters')}`);
          if (variance !== null) await connector.run(addNoiseVarianceSql('sisters', 'G', 'runout', variance));
          const spreads = [...new Set(readings.map(({ spread }) => spread))];
          const parts = spreads.map((spread) =>
            part(
              readings.filter((one) => one.spread === spread),
              spread,
            ),
          );
          await connector.run(
            `INSERT INTO ${warehouseRuns} (${statisticsColumns.join(', ')}) VALUES ${parts.join(', ')}`,
          );
          const sql = `SELECT ${columns.join(', ')} FROM (${mergedRunsSql('sisters', 'runout')})`;
          const rows = await queryRows(connector, sql, row);
          expect(rows).toHaveLength(1);
          // Where no variance is known, the noise is taken as 0.01 mm.
          const expected = direct(readings, variance ?? 0.0001);
          for (const column of columns)
            expect(
              Math.abs((rows[0]?.[column] ?? Number.POSITIVE_INFINITY) - expected[column]),
              column,
            ).toBeLessThan(1e-12 * Math.max(1, Math.abs(expected[column])));
        },
      ),
      { numRuns: 60 },
    );
  });
});
