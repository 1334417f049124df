import { canonicalTables } from '../../records/canonicalTables';

/** Tables that hold every imported row as text, with its file and line (readings have tables of their own), and the list of problems. */
export function createRecordTablesSql(): string {
  const raw = canonicalTables
    .filter(({ name }) => name !== 'readings')
    .map((table) => {
      const columns = table.columns.map((column) => `"${column.name}" VARCHAR`).join(', ');
      return `CREATE TABLE raw_${table.name} (file VARCHAR, line INTEGER, value_column VARCHAR, raw_text VARCHAR, ${columns});`;
    });
  return `${raw.join('\n')}
    CREATE TABLE sheet_frames (unit VARCHAR, frame VARCHAR, file VARCHAR, line INTEGER);
    CREATE TABLE cell_reasons (file VARCHAR, line INTEGER, column_name VARCHAR, header VARCHAR, raw VARCHAR, reason VARCHAR);
    CREATE TABLE no_readings (file VARCHAR, line INTEGER);
    CREATE TABLE problems (table_name VARCHAR, file VARCHAR, line INTEGER, column_name VARCHAR, raw VARCHAR, reason VARCHAR, action VARCHAR);`;
}
