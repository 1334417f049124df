import { canonicalTable } from '../records/canonicalTables';
import type { Connector } from './Connector';
import { rawReadingsSql } from './sql/checkedReadings';
import { dropRowNumbersSql, numberRowsSql, valueByRangeSql } from './sql/lineNumbers';
import { heldSql, settleFaultsSql, takeCheckedSql } from './sql/typedTable';
import { hasFaults } from './typeTable';

const table = canonicalTable('readings');

/** Makes `readings` of the checked readings: gives those of long files their lines, and lists what cannot be read. */
export async function typeReadings(connector: Connector): Promise<void> {
  await countLines(connector);
  if (await hasFaults(connector, table))
    await connector.run(`INSERT INTO held_readings SELECT file, line, value_column, overhaul FROM checked_readings WHERE ${heldSql};
      ${settleFaultsSql(table)}`);
  await connector.run(`${takeCheckedSql(table)} ${rawReadingsSql}`);
}

async function countLines(connector: Connector): Promise<void> {
  const [uncounted] = await connector.query('SELECT count(*)::INTEGER AS n FROM uncounted_readings');
  if (uncounted?.n === 0) return;
  await connector.run(numberRowsSql('checked_readings'));
  const rows = await connector.query(`
    SELECT (f.first_row + u.rows_before)::INTEGER AS first_row, u.row_count, u.first_line, u.id_before
    FROM uncounted_readings u JOIN (SELECT file, min(row_number) AS first_row FROM checked_readings GROUP BY file) f USING (file) ORDER BY 1`);
  const ranges = rows.map((row) => ({
    lastRow: Number(row.first_row) + Number(row.row_count) - 1,
    line: Number(row.first_line) - Number(row.first_row),
    id: Number(row.id_before),
  }));
  const added = (by: 'line' | 'id') =>
    valueByRangeSql(ranges.map((range) => ({ lastRow: range.lastRow, value: range[by] })));
  await connector.run(`ALTER TABLE checked_readings ALTER line TYPE INTEGER USING coalesce(line, row_number + ${added('line')});
    ALTER TABLE checked_readings ALTER id TYPE INTEGER USING coalesce(id, line + ${added('id')});
    ${dropRowNumbersSql('checked_readings')}`);
}
