import type { OnPiece } from '../records/csv/cutCsv';
import type { Connector } from './Connector';
import { placedReadingsSql, placedSetsSql, runReadingsSql, seriesNamesSql } from './sql/placedReadings';
import { quoted } from './sql/quoted';

/** From so many readings on they are placed by characteristic, so that others get their turn in between. */
const manyReadings = 300_000;

/** Makes series of the readings and places each in its run. */
export async function placeReadings(connector: Connector, onPiece: OnPiece): Promise<void> {
  await connector.run(seriesNamesSql);
  const counts = await connector.query(
    'SELECT CAST(characteristic AS VARCHAR) AS characteristic, count(*)::INTEGER AS n FROM readings GROUP BY characteristic ORDER BY 1',
  );
  const all = counts.reduce((sum, { n }) => sum + Number(n), 0);
  const pieces =
    all < manyReadings
      ? [{ condition: 'true', readings: all }]
      : counts.map(({ characteristic, n }) => ({
          condition: `characteristic = ${quoted(String(characteristic))}`,
          readings: Number(n),
        }));
  let placed = 0;
  for (const { condition, readings } of pieces) {
    const into = (table: string) => (placed === 0 ? `CREATE TABLE ${table} AS` : `INSERT INTO ${table}`);
    await connector.run(
      `${into('placed_readings')} ${placedReadingsSql(condition)}; ${into('placed_sets')} ${placedSetsSql(condition)};`,
    );
    placed += readings;
    await onPiece(placed / Math.max(1, all));
  }
  await connector.run(runReadingsSql);
}
