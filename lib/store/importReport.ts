import type { ImportedFile, Problem } from '../records/importReport';
import type { Connector } from './Connector';
import type { ImportedData } from './importFiles';
import type { LoadedFile } from './loadFile';

const countsSql = `
  SELECT file, 'readings_in' AS what, count(*)::INTEGER AS n FROM raw_readings GROUP BY file
  UNION ALL SELECT file, 'readings_used', count(*)::INTEGER FROM readings GROUP BY file
  UNION ALL SELECT file, 'readings_none', count(*)::INTEGER FROM no_readings GROUP BY file
  UNION ALL SELECT file, 'lines_used', count(DISTINCT line)::INTEGER FROM (SELECT file, line FROM readings UNION ALL SELECT file, line FROM no_readings) GROUP BY file
  UNION ALL SELECT file, 'overhauls_used', count(*)::INTEGER FROM overhauls GROUP BY file`;

const problemsSql = `
  SELECT file, line AS "row", column_name AS "column", raw, reason, action FROM problems ORDER BY file, line, action, column_name, reason LIMIT $1::BIGINT`;

/**
 * Counts every file's rows and readings after all checks, and lists the problems, those of uncut lines included.
 *
 * @param problemsListed how many problems are listed at the most; all are counted
 */
export async function importReport(
  connector: Connector,
  loaded: readonly LoadedFile[],
  problemsListed: number,
): Promise<Omit<ImportedData, 'questions' | 'meanings'>> {
  const counts = new Map(
    (await connector.query(countsSql)).map((row) => [`${row.what} ${row.file}`, Number(row.n)]),
  );
  const files: ImportedFile[] = [];
  for (const file of loaded) {
    const count = (what: string) => counts.get(`${what} ${file.name}`) ?? 0;
    const rowsUsed = await usedRows(connector, file, count);
    const isReadings = file.recognised.kind === 'table' && file.recognised.table.name === 'readings';
    const readingsNone = count('readings_none');
    const readingsIn = file.readingCells ?? (isReadings ? file.rowsIn : count('readings_in'));
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
  const uncut: Problem[] = loaded.flatMap((file) =>
    file.held.map((line) => ({
      file: file.name,
      row: line.row,
      column: '',
      raw: line.raw,
      reason: line.reason,
      action: 'held' as const,
    })),
  );
  const problems = (await connector.query(problemsSql, [problemsListed])) as unknown as readonly Problem[];
  const [total] = await connector.query('SELECT count(*)::INTEGER AS n FROM problems');
  return {
    files,
    problems: [...uncut, ...problems].slice(0, problemsListed),
    problemsFound: uncut.length + Number(total?.n ?? 0),
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
    return file.recognised.isLong ? count('lines_used') : count('overhauls_used');
  }
  const [row] = await connector.query(
    `SELECT count(*)::INTEGER AS n FROM ${file.recognised.table.name} WHERE file = $1`,
    [file.name],
  );
  return Number(row?.n ?? 0);
}
