import { canonicalTables } from '../records/canonicalTables';
import type { ImportedFile, Problem } from '../records/importReport';
import type { Connector } from './Connector';
import type { ImportedData } from './importFiles';
import type { LoadedFile } from './loadFile';

const countsSql = `
  SELECT file, 'readings_in' AS what, count(*)::INTEGER AS n FROM raw_readings GROUP BY file
  UNION ALL SELECT file, 'readings_none', count(*)::INTEGER FROM no_readings GROUP BY file
  ${canonicalTables.map(({ name }) => `UNION ALL SELECT file, '${name}_used', count(*)::INTEGER FROM ${name} GROUP BY file`).join(' ')}`;

/** Lines of a file that give a reading, or say that there is none. */
const linesUsedSql = `SELECT count(DISTINCT line)::INTEGER AS n FROM (SELECT line FROM readings WHERE file = $1 UNION ALL SELECT line FROM no_readings WHERE file = $1)`;

const problemsSql = `
  SELECT p.file, p.line AS "row", p.column_name AS "column", p.raw, p.reason, p.action, (p.action = 'held' AND d.file IS NOT NULL)::INTEGER AS releasable
  FROM problems p LEFT JOIN (SELECT DISTINCT file, line, column_name FROM doubts) d USING (file, line, column_name)`;

/** A limit on problems that no set of files reaches. */
export const everyProblem = 1e12;

/** The problems in order of file and line, as many as are asked for; of the held ones alone if so asked. */
export async function listedProblems(
  connector: Connector,
  limit: number,
  heldOnly = false,
): Promise<readonly Problem[]> {
  const rows = await connector.query(
    `${problemsSql} ${heldOnly ? "WHERE p.action = 'held'" : ''} ORDER BY p.file, p.line, p.action, p.column_name, p.reason LIMIT $1::BIGINT`,
    [limit],
  );
  return rows.map(
    ({ releasable, ...problem }) =>
      ({ ...problem, ...(releasable === 1 ? { releasable: true } : {}) }) as unknown as Problem,
  );
}

/**
 * Counts every file's rows and readings after all checks, and lists the problems, those of uncut lines included.
 *
 * @param problemsListed how many problems are listed at the most; all are counted
 */
export async function importReport(
  connector: Connector,
  loaded: readonly LoadedFile[],
  problemsListed: number,
): Promise<Omit<ImportedData, 'questions' | 'sheets' | 'rulings'>> {
  const counts = new Map(
    (await connector.query(countsSql)).map((row) => [`${row.what} ${row.file}`, Number(row.n)]),
  );
  const files: ImportedFile[] = [];
  for (const file of loaded) {
    const count = (what: string) => counts.get(`${what} ${file.name}`) ?? 0;
    const rowsUsed = await usedRows(connector, file, count);
    const isReadings = file.recognised.kind === 'table' && file.recognised.table.name === 'readings';
    const readingsNone = count('readings_none');
    const readingsCut = file.readingCells ?? (isReadings ? file.rowsIn : count('readings_in'));
    const readingsIn = readingsCut + (file.readingCellsUncut ?? 0);
    files.push({
      file: file.name,
      table:
        file.recognised.kind === 'table'
          ? file.recognised.table.name
          : file.recognised.kind === 'wide'
            ? 'one row an overhaul'
            : file.recognised.kind === 'sheet'
              ? `a workshop’s sheet, one row ${file.recognised.isLong ? 'a reading' : 'an overhaul'}`
              : null,
      rowsIn: file.rowsIn,
      rowsUsed,
      rowsHeld: file.rowsIn - rowsUsed,
      readingsIn,
      readingsUsed: count('readings_used'),
      readingsHeld: readingsIn - count('readings_used') - readingsNone,
      readingsNone,
      message: file.message,
    });
  }
  const [total] = await connector.query('SELECT count(*)::INTEGER AS n FROM problems');
  return {
    files,
    problems: await listedProblems(connector, problemsListed),
    problemsFound: Number(total?.n ?? 0),
    readingsUsed: files.reduce((sum, file) => sum + file.readingsUsed, 0),
  };
}

async function usedRows(
  connector: Connector,
  file: LoadedFile,
  count: (what: string) => number,
): Promise<number> {
  if (file.recognised.kind === 'none') return 0;
  if (file.recognised.kind === 'wide') return count('overhauls_used');
  if (file.recognised.kind === 'sheet') {
    if (!file.recognised.isLong) return count('overhauls_used');
    const [lines] = await connector.query(linesUsedSql, [file.name]);
    return Number(lines?.n ?? 0);
  }
  return count(`${file.recognised.table.name}_used`);
}
