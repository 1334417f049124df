import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Connector, Database } from '../../lib/store/Connector';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';

let database: Database;
let connector: Connector;

beforeAll(async () => {
  database = await openNodeDatabase({ threads: 1 });
  connector = await database.connect();
  await connector.run(`CREATE TABLE levels AS
    SELECT i::INTEGER AS id, 'T-' || (i % 90) AS unit, 0.25 + (i % 40) / 1000.0 AS level_mm, NULL::DOUBLE AS lower_mm FROM range(400000) r(i)`);
});
afterAll(() => database.close());

async function bytesHeld(): Promise<number> {
  const [row] = await connector.query(
    "SELECT sum(memory_usage_bytes)::DOUBLE AS bytes FROM duckdb_memory() WHERE tag IN ('IN_MEMORY_TABLE', 'BASE_TABLE')",
  );
  return Number(row?.bytes);
}

const sums = () =>
  connector.query(
    'SELECT unit, count(*)::INTEGER AS n, sum(level_mm)::DOUBLE AS sum FROM levels GROUP BY unit ORDER BY unit',
  );

it('leaves tables as they are while another connection is at work on them, and throws nothing', async () => {
  const other = await database.connect();
  await other.run('CREATE TABLE own AS SELECT 1 AS one; BEGIN; INSERT INTO own VALUES (2)');
  const before = await bytesHeld();
  await connector.pack();
  expect(await bytesHeld()).toBe(before);
  await other.run('COMMIT');
  await other.close();
});

it('packs tables into a third of their memory or less, with the same rows in them', async () => {
  const [before, rows] = [await bytesHeld(), await sums()];
  await connector.pack();
  expect(await bytesHeld()).toBeLessThan(before / 3);
  expect(await sums()).toEqual(rows);
  await connector.run(
    "INSERT INTO levels VALUES (400000, 'T-0', 0.3, NULL); UPDATE levels SET level_mm = 0.5 WHERE id = 0",
  );
  const [changed] = await connector.query(
    "SELECT count(*)::INTEGER AS n, max(level_mm)::DOUBLE AS most FROM levels WHERE unit = 'T-0'",
  );
  expect(changed).toEqual({ n: 4446, most: 0.5 });
});
