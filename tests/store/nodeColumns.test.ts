import { afterAll, expect, it } from 'vitest';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';

const database = await openNodeDatabase();
afterAll(() => database.close());

/** More rows than the engine hands over in one chunk. */
const rows = 5000;

it('columns hold every value of every chunk in order: numbers with NaN, texts with null where the engine has NULL', async () => {
  const connector = await database.connect();
  const columns = await connector.columns(
    `SELECT CASE WHEN i % 7 = 3 THEN NULL ELSE i / 4 END::DOUBLE AS quarter, i::INTEGER AS whole, CASE WHEN i % 5 = 0 THEN NULL ELSE 'row ' || i END AS words
      FROM range(${rows}) t(i) ORDER BY i`,
  );
  const places = Array.from({ length: rows }, (_, i) => i);
  expect(columns.get('quarter')).toEqual(
    Float64Array.from(places, (i) => (i % 7 === 3 ? Number.NaN : i / 4)),
  );
  expect(columns.get('whole')).toEqual(Float64Array.from(places));
  expect(columns.get('words')).toEqual(places.map((i) => (i % 5 === 0 ? null : `row ${i}`)));
});

it('a column without rows is an empty one', async () => {
  const connector = await database.connect();
  expect((await connector.columns('SELECT 1::DOUBLE AS x WHERE false')).get('x')).toEqual(
    new Float64Array(0),
  );
});
