import type { Connector } from '../../../store/Connector';
import type { LoadedRow, WarehouseTable } from '../warehouseTables';

const idsAtOnce = 50_000;

/** Where the used rows of imported records are, with a whole number by which they are taken piece by piece. */
const sources: Readonly<Record<WarehouseTable['name'], string>> = {
  units: `(SELECT unit, frame, row_number() OVER (ORDER BY unit) AS id FROM units)`,
  overhauls: `(SELECT o.unit, coalesce(o.overhaul, '') AS overhaul, o.date, o.unit_hours, o.fitted, row_number() OVER (ORDER BY o.unit, o.date, o.file, o.line) AS id
    FROM openings o JOIN units USING (unit))`,
  readings: `(SELECT o.unit, r.overhaul, r.characteristic, r.stage, r.clock, r.value_mm, r.lower_mm, r.upper_mm, r.id
    FROM readings_mm r JOIN overhauls o USING (overhaul))`,
};

/**
 * The used rows of imported records as they go to a table of a warehouse, some ten thousand at once: what import holds
 * stays out, and a held overhaul goes in without hours, so that it ends a run there too.
 */
export async function* rowsToLoad(
  connector: Connector,
  { name, columns }: WarehouseTable,
): AsyncGenerator<readonly LoadedRow[]> {
  const from = sources[name];
  const cells = columns.map(
    (column) =>
      `CAST(${column.name} AS ${column.kind === 'number' ? 'DOUBLE' : 'VARCHAR'}) AS ${column.name}`,
  );
  const [ends] = await connector.query(
    `SELECT min(id)::INTEGER AS first, max(id)::INTEGER AS last FROM ${from}`,
  );
  const last = Number(ends?.last ?? -1);
  for (let id = Number(ends?.first ?? 0); id <= last; id += idsAtOnce) {
    const rows = await connector.query(
      `SELECT ${cells.join(', ')} FROM ${from} WHERE id BETWEEN ${id} AND ${id + idsAtOnce - 1} ORDER BY id`,
    );
    if (rows.length > 0) yield rows.map((row) => columns.map((column) => row[column.name] ?? null));
  }
}
