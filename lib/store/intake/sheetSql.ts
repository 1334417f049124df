import type { ColumnMeaning, ColumnRole } from '../../records/intake/types';
import { addReadingsSql, lastReadingIdSql } from '../sql/checkedReadings';
import { quoted } from '../sql/quoted';

/** Roles whose texts go to the overhaul as they are. */
export const plainRoles = [
  'unit',
  'frame',
  'site',
  'engine',
  'bank',
  'workshop',
  'fitted',
  'remarks',
] as const;
/** Roles of the overhaul whose texts are interpreted first. */
export const interpretedRoles = ['date', 'unit_hours', 'engine_hours', 'kind'] as const;

export type MeaningOf = ReadonlyMap<ColumnRole, ColumnMeaning>;

/** Columns of the sheet by role; of a role that stands several times the first one. */
export function byRole(meanings: readonly ColumnMeaning[]): MeaningOf {
  const roles = new Map<ColumnRole, ColumnMeaning>();
  for (const meaning of meanings) if (!roles.has(meaning.role)) roles.set(meaning.role, meaning);
  return roles;
}

/** The trimmed text of a role's cell, or NULL where the sheet has no such column. */
export function textSql(roles: MeaningOf, role: ColumnRole): string {
  const meaning = roles.get(role);
  return meaning === undefined
    ? 'CAST(NULL AS VARCHAR)'
    : `nullif(trim(replace(s.c${meaning.index}, chr(30), chr(10))), '')`;
}

/** The interpreted text of a role's cell; the raw text where it is held or waits, so that the checks list it. */
function interpretedSql(roles: MeaningOf, role: ColumnRole): string {
  const meaning = roles.get(role);
  return meaning === undefined
    ? 'CAST(NULL AS VARCHAR)'
    : `CASE WHEN o${meaning.index}.outcome = 'used' THEN o${meaning.index}.value WHEN o${meaning.index}.outcome = 'none' THEN NULL ELSE s.c${meaning.index} END`;
}

function joins(roles: MeaningOf, wanted: readonly ColumnRole[]): string {
  return wanted
    .map((role) => roles.get(role))
    .filter((meaning) => meaning !== undefined)
    .map(
      (meaning) =>
        `LEFT JOIN outcome_${meaning.index} o${meaning.index} ON o${meaning.index}.text = s.c${meaning.index}`,
    )
    .join('\n      ');
}

const overhaulRoles: readonly ColumnRole[] = [...plainRoles, ...interpretedRoles];

/** Columns of the sheet that tell the overhaul. */
function overhaulColumns(roles: MeaningOf): readonly number[] {
  const indexes = (['overhaul', ...overhaulRoles] as const).flatMap((role) => roles.get(role)?.index ?? []);
  return [...new Set(indexes)];
}

/**
 * Overhauls of the sheet, a row each line in a wide sheet and in a long one a row for all lines that say the same of it, under
 * the first of them: the named one, else unit and day, told apart by hours where these differ; NULL where neither is given.
 */
export function sheetOverhaulsSql(roles: MeaningOf): string {
  const columns = overhaulRoles
    .map(
      (role) =>
        `${(plainRoles as readonly string[]).includes(role) ? textSql(roles, role) : interpretedSql(roles, role)} AS "${role}"`,
    )
    .join(',\n      ');
  const texts = overhaulColumns(roles)
    .map((index) => `c${index}`)
    .join(', ');
  const told = roles.has('value')
    ? `SELECT ${texts}, min(line) AS line FROM sheet GROUP BY ${texts}`
    : `SELECT ${texts}, line FROM sheet`;
  return `CREATE TABLE sheet_overhauls AS
    WITH named AS (SELECT s.*, ${textSql(roles, 'overhaul')} AS given, ${columns}
      FROM (${told}) s ${joins(roles, interpretedRoles)}),
    placed AS (SELECT *, dense_rank() OVER (PARTITION BY unit, date ORDER BY try_cast(coalesce(unit_hours, engine_hours) AS DOUBLE) NULLS LAST) AS place FROM named)
    SELECT *, coalesce(given, unit || '/' || date || CASE WHEN place > 1 THEN '/' || place ELSE '' END) AS overhaul FROM placed`;
}

/** Join of a line s of the sheet with its overhaul v. */
function overhaulJoin(roles: MeaningOf): string {
  const same = roles.has('value')
    ? overhaulColumns(roles).map((index) => `v.c${index} IS NOT DISTINCT FROM s.c${index}`)
    : ['v.line = s.line'];
  return `JOIN sheet_overhauls v ON ${same.join(' AND ')}`;
}

/** Name of the overhaul v of a line s; one that has neither a name nor unit and day is a line's own. */
function overhaulName(file: string): string {
  return `coalesce(v.overhaul, ${quoted(file)} || ':' || s.line)`;
}

/** Overhauls of the sheet to raw_overhauls in the order of their lines: a row each in a wide sheet, the first line of each in a long one. */
export function rawOverhaulsSql(file: string, roles: MeaningOf): string {
  const names = overhaulRoles.filter((role) => role !== 'frame').map((name) => `"${name}"`);
  const rows = roles.has('value')
    ? `SELECT * FROM (
        SELECT ${quoted(file)}, line, overhaul, ${names.join(', ')} FROM sheet_overhauls WHERE overhaul IS NOT NULL
          QUALIFY row_number() OVER (PARTITION BY overhaul ORDER BY line) = 1
        UNION ALL SELECT ${quoted(file)}, s.line, ${overhaulName(file)}, ${names.map((name) => `v.${name}`).join(', ')}
          FROM sheet s ${overhaulJoin(roles)} WHERE v.overhaul IS NULL)`
    : `SELECT ${quoted(file)}, line, coalesce(overhaul, ${quoted(file)} || ':' || line), ${names.join(', ')} FROM sheet_overhauls`;
  return `INSERT INTO raw_overhauls (file, line, overhaul, ${names.join(', ')}) ${rows} ORDER BY line;
    INSERT INTO sheet_frames SELECT unit, frame, ${quoted(file)}, line FROM sheet_overhauls WHERE unit IS NOT NULL AND frame IS NOT NULL`;
}

/** Reasons for the held and waiting cells of a column of the overhaul or of words, and one note for those read with the same interpretation. */
export function ownRoleReasonsSql(file: string, meaning: ColumnMeaning): string {
  return reasonsSql(file, meaning, quoted(meaning.role));
}

function reasonsSql(file: string, meaning: ColumnMeaning, canonicalColumn: string): string {
  const table = `outcome_${meaning.index}`;
  const from = `FROM sheet s JOIN ${table} o ON o.text = s.c${meaning.index}`;
  return `INSERT INTO cell_reasons SELECT ${quoted(file)}, s.line::INTEGER, ${canonicalColumn}, ${quoted(meaning.name)}, s.c${meaning.index}, o.note
      ${from} WHERE o.outcome IN ('held', 'waiting');
    INSERT INTO problems SELECT 'sheet', ${quoted(file)}, min(s.line::INTEGER), ${quoted(meaning.name)}, arg_min(s.c${meaning.index}, s.line::INTEGER),
        o.note || CASE WHEN count(*) > 1 THEN ' (and ' || (count(*) - 1) || ' more in this column)' ELSE '' END, 'interpreted'
      ${from} WHERE o.outcome IN ('used', 'none') AND o.note IS NOT NULL GROUP BY o.note`;
}

/** Counts the cells of a reading column that say in words that nothing was measured. */
function noReadingsSql(file: string, meaning: ColumnMeaning): string {
  return `INSERT INTO no_readings SELECT ${quoted(file)}, s.line::INTEGER FROM sheet s JOIN outcome_${meaning.index} o ON o.text = s.c${meaning.index} WHERE o.outcome = 'none'`;
}

/** What is settled for a whole column of readings; NULL while it is asked, or where another column says it. */
export interface SettledReading {
  readonly stage: string | null;
  readonly clock: string | null;
  readonly uom: string | null;
}

function literal(text: string | null): string {
  return text === null ? 'CAST(NULL AS VARCHAR)' : quoted(text);
}

/** Readings under one column of a sheet follow those that came before, in order of line. */
const idSql = `line + ${lastReadingIdSql}`;
/** A sheet's own line is the source of its readings. */
const noSource = 'CAST(NULL AS VARCHAR) AS source_file, CAST(NULL AS VARCHAR) AS source_row';

/** Adds the readings under one column of a wide sheet; stage, clock and uom as settled, NULL while asked. */
export function wideReadingsSql(
  file: string,
  roles: MeaningOf,
  meaning: ColumnMeaning,
  settled: SettledReading,
): string {
  const column = `o.outcome = 'used'`;
  const rows = `(SELECT ${quoted(file)} AS file, s.line::INTEGER AS line, ${quoted(meaning.name)} AS value_column, s.c${meaning.index} AS raw_text, ${overhaulName(file)} AS overhaul,
        ${literal(meaning.characteristic)} AS characteristic, ${literal(settled.stage)} AS stage, ${literal(settled.clock)} AS clock, CASE WHEN ${column} THEN o.value ELSE s.c${meaning.index} END AS value,
        coalesce(o.uom, ${literal(settled.uom)}) AS uom, CASE WHEN ${column} THEN o.lower END AS lower, CASE WHEN ${column} THEN o.upper END AS upper, ${noSource}
      FROM sheet s JOIN outcome_${meaning.index} o ON o.text = s.c${meaning.index} ${overhaulJoin(roles)}
      WHERE o.outcome <> 'none')`;
  return `${addReadingsSql(rows, idSql)}
    ${reasonsSql(file, meaning, quoted(meaning.name))};
    ${noReadingsSql(file, meaning)}`;
}

/** Cells of a long sheet's line that hold a reading: its value, or else the ends of an interval in columns of their own. */
export function readingCellSql(roles: MeaningOf, value: ColumnMeaning): string {
  const own = `nullif(trim(s.c${value.index}), '')`;
  const ends = (['lower', 'upper'] as const)
    .flatMap((role) => roles.get(role) ?? [])
    .map(({ index }) => `nullif(trim(s.c${index}), '')`);
  if (ends.length === 0 || roles.get('value') !== value) return own;
  return `coalesce(${own}, nullif(concat_ws(' to ', ${ends.join(', ')}), ''))`;
}

/** Adds the readings of a long sheet, one a line. */
export function longReadingsSql(
  file: string,
  roles: MeaningOf,
  value: ColumnMeaning,
  settled: SettledReading,
): string {
  const word = (role: ColumnRole) => interpretedSql(roles, role);
  const ends = (role: 'lower' | 'upper') =>
    roles.has(role)
      ? word(role)
      : `CASE WHEN o${value.index}.outcome = 'used' THEN o${value.index}.${role} END`;
  const roleNames: ColumnRole[] = ['characteristic', 'stage', 'clock', 'uom', 'lower', 'upper'];
  const rows = `(SELECT ${quoted(file)} AS file, s.line::INTEGER AS line, ${quoted(value.name)} AS value_column, ${readingCellSql(roles, value)} AS raw_text, ${overhaulName(file)} AS overhaul,
        coalesce(${literal(value.characteristic)}, ${word('characteristic')}) AS characteristic, coalesce(${literal(settled.stage)}, ${word('stage')}) AS stage, coalesce(${literal(settled.clock)}, ${word('clock')}) AS clock,
        CASE WHEN o${value.index}.outcome = 'used' THEN o${value.index}.value ELSE s.c${value.index} END AS value,
        coalesce(o${value.index}.uom, ${roles.has('uom') ? word('uom') : 'NULL'}, ${literal(settled.uom)}) AS uom, ${ends('lower')} AS lower, ${ends('upper')} AS upper, ${noSource}
      FROM sheet s ${overhaulJoin(roles)} LEFT JOIN outcome_${value.index} o${value.index} ON o${value.index}.text = s.c${value.index} ${joins(roles, roleNames)}
      WHERE o${value.index}.outcome IS DISTINCT FROM 'none' AND ${readingCellSql(roles, value)} IS NOT NULL)`;
  return `${addReadingsSql(rows, idSql)}
    ${reasonsSql(file, value, quoted(value.name))};
    ${noReadingsSql(file, value)}`;
}

/** A unit of measure that is written and not understood has its own reason. */
const noUnitWritten = `len(list_filter(coalesce(r.faults, []), lambda f: f.column_name = 'uom' AND f.raw <> '')) = 0`;

/**
 * Takes the cells of a column that wait though they can be read (for its stage, side or unit of measure) out of
 * the checked readings and lists each; a cell's own reason goes before the column's. Cells with their own unit need no other.
 */
export function waitingColumnSql(
  file: string,
  meaning: ColumnMeaning,
  waitsFor: 'stage' | 'side' | 'uom',
  reason: string,
): string {
  const cells = `r.file = ${quoted(file)} AND r.value_column = ${quoted(meaning.name)}${waitsFor === 'uom' ? ` AND r.uom IS NULL AND ${noUnitWritten}` : ''}`;
  return `INSERT INTO problems SELECT 'readings', r.file, r.line, r.value_column, r.raw_text,
      coalesce((SELECT min(c.reason) FROM cell_reasons c WHERE c.file = r.file AND c.line = r.line AND c.column_name = r.value_column), ${quoted(reason)}), 'held'
      FROM checked_readings r WHERE ${cells};
    DELETE FROM checked_readings r WHERE ${cells}`;
}

/** Keeps the hours of each overhaul as they stand in the sheet, for problems found once they have been interpreted. */
export function ownHoursSql(file: string, roles: MeaningOf): string {
  const text = textSql(roles, roles.has('unit_hours') ? 'unit_hours' : 'engine_hours');
  return `INSERT INTO own_texts SELECT r.file, r.line, 'unit_hours', coalesce(${text}, '') FROM sheet s
    JOIN raw_overhauls r ON r.file = ${quoted(file)} AND r.line = s.line::INTEGER`;
}

/** Notes under which header the columns of the overhaul stand, for problems that are told of a whole row. */
export function headersSql(file: string, roles: MeaningOf): string {
  const headers = [...plainRoles, ...interpretedRoles].flatMap((role) => {
    const meaning = roles.get(role) ?? (role === 'unit_hours' ? roles.get('engine_hours') : undefined);
    return meaning === undefined
      ? []
      : [`(${quoted(file)}, NULL, ${quoted(role)}, ${quoted(meaning.name)}, NULL, NULL)`];
  });
  return `INSERT INTO cell_reasons VALUES ${headers.join(', ')}`;
}

/** Gives the problems of foreign sheets the reason their cells were held for, and the sheet's own names of columns. */
export const ownReasonsSql = `
  UPDATE problems SET reason = c.reason, raw = c.raw, column_name = c.header
    FROM cell_reasons c WHERE c.file = problems.file AND c.line = problems.line AND c.column_name = problems.column_name AND problems.action = 'held';
  UPDATE problems SET column_name = c.header
    FROM cell_reasons c WHERE c.line IS NULL AND c.file = problems.file AND c.column_name = problems.column_name AND problems.table_name = 'overhauls' AND problems.action = 'held';
  DELETE FROM problems WHERE table_name = 'overhauls' AND rowid NOT IN (SELECT min(rowid) FROM problems GROUP BY table_name, file, line, column_name, raw, reason, action)`;
