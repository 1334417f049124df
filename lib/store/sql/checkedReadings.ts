import { canonicalTable } from '../../records/canonicalTables';
import { convertedRowsSql, faultsType, typeOf, wordTypesSql } from './convertedRows';
import { quoted } from './quoted';

const readings = canonicalTable('readings');

/**
 * Makes the table that takes in converted readings before their faults are listed. A long table is too large to be held
 * twice or to have the same text in every row, so that names of files, characteristics and other words have types of their own.
 *
 * @param codes every characteristic that a file may use
 */
export function checkedReadingsSql(codes: Iterable<string>, files: Iterable<string>): string {
  const columns = readings.columns.map((column) => `"${column.name}" ${typeOf(readings, column)}`).join(', ');
  const names = [...new Set(['', ...files])].map(quoted);
  return `CREATE TYPE readings_file AS ENUM (${names.join(', ')});
    ${wordTypesSql(readings, codes)}
    CREATE TABLE checked_readings (id INTEGER, file readings_file, line INTEGER, value_column VARCHAR, raw_text VARCHAR, unknown_characteristic VARCHAR,
      ${columns}, faults ${faultsType});
    CREATE TABLE uncounted_readings (file readings_file, rows_before INTEGER, row_count INTEGER, first_line INTEGER, id_before INTEGER);
    CREATE TABLE held_readings (file VARCHAR, line INTEGER, value_column VARCHAR, overhaul VARCHAR);`;
}

/** Largest id that a reading has or is to have. */
export const lastReadingIdSql = `greatest(coalesce((SELECT max(id) FROM checked_readings), 0),
    coalesce((SELECT max(id_before + first_line + row_count) FROM uncounted_readings), 0))`;

/**
 * Adds readings to the checked ones, each cell converted and checked as it comes in.
 *
 * @param from SQL for FROM: file, line, value_column, raw_text and the columns of readings as text
 * @param id SQL expression of the id of a row, NULL for rows whose line is counted later
 */
export function addReadingsSql(from: string, id: string, isTidy = false): string {
  return `INSERT INTO checked_readings ${convertedRowsSql(readings, { from, id, isTidy })};`;
}

/** `raw_readings` tells for good what came in: the readings, and those that were taken from them. */
export const rawReadingsSql = `CREATE VIEW raw_readings AS SELECT file, line, value_column, overhaul FROM readings UNION ALL SELECT * FROM held_readings`;
