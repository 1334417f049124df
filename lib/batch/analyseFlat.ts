import { FleetAnswers } from '../analysis/engine/FleetAnswers';
import { problemsTable } from '../analysis/fleetTables';
import type { GroupBy } from '../analysis/grouping/sisterGroupOf';
import { NoUsableReadings, openAnalysis } from '../analysis/openAnalysis';
import { resultTables } from '../analysis/resultTables';
import { correctedReport, partCorrected, rulingsIn } from '../records/decisions/correctedFiles';
import { openNodeDatabase } from '../store/nodeDatabase';
import { readDataFile } from './partitions/readDataFile';
import type { DataFile } from './partitions/readDataFolder';
import { unusableReasons } from './unusableReasons';
import { writeTable } from './writeTable';

/** How a flat folder is analysed. */
export interface FlatSettings {
  readonly out: string;
  readonly asOf: string | null;
  readonly groupBy: GroupBy;
}

/** Analyses files that hold the whole fleet and writes the tables of results. Returns the exit status. */
export async function analyseFlat(listed: readonly DataFile[], settings: FlatSettings): Promise<number> {
  const { files, corrected } = partCorrected(await Promise.all(listed.map(readDataFile)), '');
  // With several threads the last bits of sums, and so of results, differ from run to run.
  const database = await openNodeDatabase({ threads: 1 });
  try {
    const analysis = await openAnalysis(
      await database.connect(),
      files,
      'own',
      { ...settings, withoutQuarters: true, decisions: rulingsIn(corrected) },
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
    const reasons = unusableReasons(error).map((reason) => `  ${reason}`);
    process.stderr.write(`${error.message}\n${reasons.join('\n')}\n`);
    return 2;
  } finally {
    await database.close();
  }
}
