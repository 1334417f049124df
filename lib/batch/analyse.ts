import { mkdir } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { FleetAnswers } from '../analysis/engine/FleetAnswers';
import { problemsTable } from '../analysis/fleetTables';
import { type GroupBy, groupings, isGroupBy } from '../analysis/grouping/sisterGroupOf';
import { isIsoDay } from '../analysis/isoDate';
import { NoUsableReadings, openAnalysis } from '../analysis/openAnalysis';
import { resultTables } from '../analysis/resultTables';
import { correctedReport, partCorrected, rulingsIn } from '../records/decisions/correctedFiles';
import { openNodeDatabase } from '../store/nodeDatabase';
import { filesOf } from './filesOf';
import { runMain, UnusableArguments } from './runMain';
import { analyseWarehouse } from './warehouse/analyseWarehouse';
import { writeTable } from './writeTable';

const usage = `Usage: npm run -s analyse -- --data DIR [--as-of YYYY-MM-DD] [--group frame|frame+site|frame+duty] [--warehouse FILE.json] --out DIR`;

interface Arguments {
  readonly data: string;
  readonly out: string;
  readonly asOf: string | null;
  readonly groupBy: GroupBy;
  /** File that says where the readings are, if they are not in the folder. */
  readonly warehouse: string | null;
}

function readArguments(words: readonly string[]): Arguments {
  const options = {
    data: { type: 'string' },
    out: { type: 'string' },
    'as-of': { type: 'string' },
    group: { type: 'string' },
    warehouse: { type: 'string' },
  } as const;
  let values: { data?: string; out?: string; 'as-of'?: string; group?: string; warehouse?: string };
  try {
    values = parseArgs({ args: [...words], options }).values;
  } catch (error) {
    throw new UnusableArguments(error instanceof Error ? error.message : String(error));
  }
  const { data, out, 'as-of': asOf = null, group = 'frame', warehouse = null } = values;
  if (data === undefined)
    throw new UnusableArguments('--data is missing: name the folder with the CSV files');
  if (out === undefined) throw new UnusableArguments('--out is missing: name the folder to write to');
  if (asOf !== null && !isIsoDay(asOf)) {
    throw new UnusableArguments(`--as-of requires a date of the form YYYY-MM-DD, got '${asOf}'`);
  }
  if (!isGroupBy(group)) {
    throw new UnusableArguments(`--group requires one of ${groupings.join(', ')}, got '${group}'`);
  }
  return { data, out, asOf, groupBy: group, warehouse };
}

/** The batch command: canonical CSV files in, tables of results out. Returns the exit status. */
async function main(words: readonly string[]): Promise<number> {
  const settings = readArguments(words);
  const { warehouse } = settings;
  if (warehouse !== null) return analyseWarehouse({ ...settings, warehouse });
  const { files, corrected } = partCorrected(await filesOf(settings.data), '');
  await mkdir(settings.out, { recursive: true });
  const database = await openNodeDatabase();
  try {
    const analysis = await openAnalysis(
      await database.connect(),
      files,
      'own',
      { ...settings, decisions: rulingsIn(corrected) },
      async () => {},
    );
    const { fleet, imported } = analysis;
    const tables = await resultTables(new FleetAnswers(analysis, async () => {}));
    for (const table of tables) await writeTable(settings.out, table);
    const used = fleet.files.reduce((sum, file) => sum + file.readingsUsed, 0);
    const held = fleet.files.reduce((sum, file) => sum + file.readingsHeld, 0);
    process.stdout.write(
      `${fleet.units.length} units, ${used} readings used, ${held} held, as of ${fleet.asOf}; written to ${settings.out}\n`,
    );
    for (const rows of corrected) process.stdout.write(`${correctedReport(rows, imported.rulings)}\n`);
    return 0;
  } catch (error) {
    if (!(error instanceof NoUsableReadings)) throw error;
    await writeTable(settings.out, problemsTable(error.imported));
    const reasons = error.imported.files.map(
      (file) =>
        `  ${file.file}: ${file.message ?? `${file.rowsHeld} of ${file.rowsIn} rows held, see problems.csv`}`,
    );
    process.stderr.write(`${error.message}\n${reasons.join('\n')}\n`);
    return 2;
  } finally {
    await database.close();
  }
}

await runMain(main, usage);
