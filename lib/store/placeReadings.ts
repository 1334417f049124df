import type { OnPiece } from '../records/csv/cutCsv';
import type { Connector } from './Connector';
import { addPlacedReadingsSql, placedReadingsSql } from './sql/placedReadings';
import { quoted } from './sql/quoted';

/** From so many readings on they are placed by characteristic, so that others get their turn in between. */
const manyReadings = 300_000;

/** Makes series of the readings and places each in its run. */
export async function placeReadings(connector: Connector, onPiece: OnPiece): Promise<void> {
  await connector.run(placedReadingsSql);
  const counts = await connector.query(
    'SELECT CAST(characteristic AS VARCHAR) AS characteristic, count(*)::INTEGER AS n FROM readings GROUP BY characteristic ORDER BY 1',
  );
  const all = counts.reduce((sum, { n }) => sum + Number(n), 0);
  if (all < manyReadings) return connector.run(addPlacedReadingsSql('true'));
  let placed = 0;
  for (const { characteristic, n } of counts) {
    await connector.run(addPlacedReadingsSql(`characteristic = ${quoted(String(characteristic))}`));
    placed += Number(n);
    await onPiece(placed / all);
  }
}
