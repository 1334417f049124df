import { canonicalTables } from '../records/canonicalTables';
import { builtInCharacteristics, type Characteristic } from '../records/characteristics';
import { hoursOutOfOrder } from '../records/hoursInOrder';
import type { ImportedFile, InputFile, Problem } from '../records/importReport';
import { recogniseFile } from '../records/recogniseFile';
import type { Connector } from './Connector';
import { holdRows } from './holdRows';
import { importReport } from './importReport';
import { type LoadedFile, loadFile } from './loadFile';
import { allCharacteristicsSql } from './sql/characteristics';
import {
  doubtfulReadingsSql,
  incompleteClockSetsSql,
  readingsInMillimetresSql,
  readingTextsSql,
} from './sql/doubtfulReadings';
import { createRecordTablesSql } from './sql/recordTables';
import { readingsOfUnknownRunSql, runsSql, settleRunsSql } from './sql/runs';
import { seriesReadingsSql } from './sql/seriesReadings';
import { repeatedRowsSql, typedTableSql } from './sql/typedTable';
import { hoursByDateSql, overhaulsWithoutHoursSql, unitHoursSql } from './sql/unitHours';
import { addUnitsFromOverhaulsSql, overhaulsOfUnknownUnitSql } from './sql/units';

/** What an import came to; the records themselves are in the store. */
export interface ImportedData {
  readonly files: readonly ImportedFile[];
  readonly problems: readonly Problem[];
  /** All problems, those beyond the listed ones included. */
  readonly problemsFound: number;
  readonly readingsUsed: number;
}

/** More problems than any set of files can have. */
const everyProblem = 1e12;

/** Called between the steps of an import; throws to stop it. */
export type OnStep = (step: string, share: number) => Promise<void>;

/**
 * Takes files into the store: recognises each, reads every cell as text, converts and checks in SQL, derives unit hours,
 * and cuts series and runs. What cannot be used is held with its reason; nothing is fatal but an error of the engine.
 */
export async function importFiles(
  connector: Connector,
  files: readonly InputFile[],
  onStep: OnStep,
  problemsListed: number = everyProblem,
): Promise<ImportedData> {
  await connector.run(createRecordTablesSql());
  const characteristics = [...builtInCharacteristics];
  const loaded: LoadedFile[] = [];
  // Tables first: a wide sheet may use characteristics that a table adds.
  for (const file of tablesFirst(files)) {
    await onStep(`Reading ${file.name}`, (0.5 * loaded.length) / files.length);
    const recognised = recogniseFile(file.bytes, characteristics);
    loaded.push(await loadFile(connector, file, recognised));
    if (recognised.kind === 'table' && recognised.table.name === 'characteristics') {
      characteristics.push(...(await addedCharacteristics(connector)));
    }
  }
  await onStep('Checking every cell', 0.5);
  for (const table of canonicalTables) {
    await connector.run(typedTableSql(table));
    await holdRows(connector, table.name, repeatedRowsSql(table));
  }
  await onStep('Placing overhauls and readings', 0.7);
  await connector.run(allCharacteristicsSql);
  await holdRows(connector, 'overhauls', overhaulsOfUnknownUnitSql);
  await connector.run(unitHoursSql);
  await holdRows(connector, 'overhauls', overhaulsWithoutHoursSql);
  await holdFallingHours(connector);
  await connector.run(addUnitsFromOverhaulsSql);
  await connector.run(readingTextsSql);
  await holdRows(connector, 'readings', doubtfulReadingsSql);
  await holdRows(connector, 'readings', incompleteClockSetsSql);
  await onStep('Cutting series and runs', 0.85);
  await connector.run(readingsInMillimetresSql);
  await connector.run(seriesReadingsSql);
  await connector.run(runsSql);
  await holdRows(connector, 'readings', readingsOfUnknownRunSql);
  await connector.run(settleRunsSql);
  return importReport(connector, loaded, problemsListed);
}

function tablesFirst(files: readonly InputFile[]): readonly InputFile[] {
  const isCharacteristics = (file: InputFile) => /characteristics/i.test(file.name);
  return [...files.filter(isCharacteristics), ...files.filter((file) => !isCharacteristics(file))];
}

async function addedCharacteristics(connector: Connector): Promise<readonly Characteristic[]> {
  const rows = await connector.query(
    'SELECT characteristic AS code, name, shape, never_negative FROM raw_characteristics',
  );
  return rows.map((row) => ({
    code: String(row.code ?? '').trim(),
    name: String(row.name ?? '').trim(),
    shape: row.shape === 'four_clock' ? 'four_clock' : 'single',
    neverNegative: row.never_negative === 'yes',
  }));
}

/** Holds overhauls whose hours contradict the order of their dates; the fewest that leave the rest in order. */
async function holdFallingHours(connector: Connector): Promise<void> {
  const rows = await connector.query(hoursByDateSql);
  const held: string[] = [];
  for (let start = 0, end = 0; start < rows.length; start = end) {
    while (end < rows.length && rows[end]?.unit === rows[start]?.unit) end++;
    const history = rows.slice(start, end);
    for (const index of hoursOutOfOrder(history.map((row) => Number(row.unit_hours))))
      held.push(String(history[index]?.id));
  }
  if (held.length === 0) return;
  await holdRows(
    connector,
    'overhauls',
    `SELECT o.id, 'unit_hours' AS column_name, CAST(CAST(round(o.unit_hours) AS BIGINT) AS VARCHAR) AS raw,
       'the hours do not rise with the dates of the unit’s other overhauls (' || coalesce(CAST(CAST(round((SELECT max(p.unit_hours) FROM overhauls p
          WHERE p.unit = o.unit AND p.date <= o.date AND p.id NOT IN (${held.join(', ')}))) AS BIGINT) AS VARCHAR), 'no') || ' h before it): check hours and date' AS reason
     FROM overhauls o WHERE o.id IN (${held.join(', ')})`,
  );
}
