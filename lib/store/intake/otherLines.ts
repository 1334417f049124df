import { bodyLineKind } from '../../records/intake/layout/bodyLineKind';
import type { ColumnMeaning, SheetLayout } from '../../records/intake/types';
import type { Connector } from '../Connector';
import { lineTextSql } from '../rulings/lineText';
import { releaseLinesSql } from '../rulings/releaseDoubtful';
import { quoted } from '../sql/quoted';
import { type MeaningOf, textSql } from './sheetSql';

const reasons = {
  'repeated header': 'the header again: not an overhaul',
  totals: 'a totals line: not an overhaul',
  footer: 'a note under the table: not an overhaul',
  blank: 'no cell is filled: not an overhaul',
} as const;

/** Takes header repetitions, totals and notes out of the sheet, lists them, and returns their number. */
export async function setAsideNonRows(
  connector: Connector,
  file: string,
  layout: SheetLayout,
  meanings: readonly ColumnMeaning[],
): Promise<number> {
  const index = (role: string) => meanings.find((meaning) => meaning.role === role)?.index ?? 0;
  const [unit, date] = [index('unit'), index('date')];
  // Only lines without a unit or without a digit in the date can be anything but data.
  const rows = await connector.query(
    `SELECT * FROM sheet WHERE nullif(trim(c${unit}), '') IS NULL OR NOT regexp_matches(coalesce(c${date}, ''), '[0-9]')`,
  );
  const lines: string[] = [];
  for (const row of rows) {
    const cells = layout.columns.map((_, position) => String(row[`c${position}`] ?? ''));
    const kind = bodyLineKind(cells, layout);
    if (kind === 'data') continue;
    lines.push(
      `(${row.line}, ${quoted(
        cells
          .filter((cell) => cell.trim() !== '')
          .join(' | ')
          .slice(0, 200),
      )}, ${quoted(reasons[kind])})`,
    );
  }
  if (lines.length === 0) return 0;
  await connector.run(`CREATE TABLE set_aside AS SELECT * FROM (VALUES ${lines.join(', ')}) AS aside(line, raw, reason);
    INSERT INTO problems SELECT 'sheet', ${quoted(file)}, line, '', raw, reason, 'interpreted' FROM set_aside;
    DELETE FROM sheet WHERE line::INTEGER IN (SELECT line FROM set_aside); DROP TABLE set_aside`);
  return lines.length;
}

/** Holds lines that say exactly what an earlier line says; in a sheet with one row a reading a person may use them all the same. */
export async function dropRepeatedLines(
  connector: Connector,
  file: string,
  columns: readonly string[],
  isLong: boolean,
): Promise<void> {
  await dropLines(
    connector,
    file,
    columns,
    // A reading may have been taken twice; an overhaul cannot.
    isLong,
    `SELECT line, 'exact repetition of line ' || first_value(line) OVER same || ' of ' || ${quoted(file)} AS reason, row_number() OVER same AS place
     FROM sheet WHERE hash(${columns.join(', ')}) IN (SELECT hash(${columns.join(', ')}) FROM sheet GROUP BY 1 HAVING count(*) > 1)
     WINDOW same AS (PARTITION BY ${columns.join(', ')} ORDER BY line::INTEGER)`,
  );
}

/** Holds lines of an earlier revision of the same overhaul. */
export async function dropSuperseded(
  connector: Connector,
  file: string,
  columns: readonly string[],
  roles: MeaningOf,
): Promise<void> {
  if (!roles.has('revision') || roles.has('value')) return;
  const revision = textSql(roles, 'revision');
  await dropLines(
    connector,
    file,
    columns,
    false,
    `SELECT line, 'superseded by revision ' || coalesce(first_value(${revision}) OVER job, '') || ' in line ' || first_value(line) OVER job AS reason, row_number() OVER job AS place
     FROM sheet s WINDOW job AS (PARTITION BY ${textSql(roles, 'unit')}, ${textSql(roles, 'date')} ORDER BY ${revision} DESC NULLS LAST, line::INTEGER DESC)`,
  );
}

async function dropLines(
  connector: Connector,
  file: string,
  columns: readonly string[],
  isDoubt: boolean,
  question: string,
): Promise<void> {
  await connector.run(`CREATE TABLE dropped_lines AS SELECT line, reason FROM (${question}) WHERE place > 1;
    ${isDoubt ? releaseLinesSql(file) : ''}
    INSERT INTO problems SELECT 'sheet', ${quoted(file)}, s.line::INTEGER, '', ${lineTextSql(columns.map((_, index) => index))}, d.reason, 'held'
      FROM dropped_lines d JOIN sheet s ON s.line = d.line;
    DELETE FROM sheet WHERE line IN (SELECT line FROM dropped_lines); DROP TABLE dropped_lines`);
}
