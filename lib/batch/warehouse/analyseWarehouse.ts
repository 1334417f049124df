import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { FleetAnswers } from '../../analysis/engine/FleetAnswers';
import type { GroupBy } from '../../analysis/grouping/sisterGroupOf';
import { type Analysis, openAnalysis } from '../../analysis/openAnalysis';
import { resultTables } from '../../analysis/resultTables';
import { correctedReport, partCorrected, rulingsIn } from '../../records/decisions/correctedFiles';
import { openNodeDatabase } from '../../store/nodeDatabase';
import { tableOfHead } from '../../store/tableOfHead';
import { readDataFile } from '../partitions/readDataFile';
import type { DataFolder } from '../partitions/readDataFolder';
import { UnusableArguments } from '../runMain';
import { writeTogether } from '../writeTogether';
import { openWarehouse } from './openWarehouse';
import { type ReadingsCounted, runsOfWarehouse } from './runsOfWarehouse';
import { readWarehouseSettings } from './warehouseSettings';

/** What the batch command is told. */
export interface WarehouseRun {
  readonly out: string;
  readonly asOf: string | null;
  readonly groupBy: GroupBy;
  /** File that says where the warehouse is. */
  readonly warehouse: string;
}

/**
 * The batch command on readings that stay in a warehouse: the other tables come from the folder, statistics of the runs from
 * the warehouse. Either every table is written or none. Returns the exit status.
 *
 * @throws WarehouseError if the warehouse cannot be used or does not answer in full
 */
export async function analyseWarehouse(data: DataFolder, run: WarehouseRun): Promise<number> {
  const settings = await readWarehouseSettings(run.warehouse);
  if (existsSync(join(run.out, 'signals.csv')))
    throw new UnusableArguments(
      `--out: the folder '${run.out}' holds signals.csv of an analysis from readings, which none from a warehouse can bring up to date: name another folder`,
    );
  if (data.parts.length > 0)
    throw new UnusableArguments(
      '--data: with --warehouse the tables beside the readings lie in one folder, without further folders',
    );
  const all = await Promise.all(data.shared.map(readDataFile));
  const { files, corrected } = partCorrected(
    all.filter((file) => tableOfHead(file) !== 'readings'),
    '',
  );
  const warehouse = await openWarehouse(settings);
  // With several threads the last bits of sums, and so of results, differ from run to run.
  const database = await openNodeDatabase({ threads: 1 });
  try {
    let counted: ReadingsCounted | undefined;
    const runs = runsOfWarehouse(warehouse, (counts) => {
      counted = counts;
    });
    const analysis = await openAnalysis(
      await database.connect(),
      files,
      'own',
      {
        asOf: run.asOf,
        groupBy: run.groupBy,
        withoutQuarters: true,
        decisions: rulingsIn(corrected),
        runs,
      },
      async () => {},
    );
    checkNoOwnReadings(analysis);
    await writeTogether(run.out, await resultTables(new FleetAnswers(analysis, async () => {})));
    const unused = [...(counted?.unused ?? [])].map(([reason, readings]) => `; ${readings} ${reason}`);
    process.stdout.write(
      `${analysis.fleet.units.length} units, ${counted?.used ?? 0} of ${counted?.inWarehouse ?? 0} readings of ${warehouse.name} used${unused.join('')}; as of ${analysis.fleet.asOf}; written to ${run.out}, without signals.csv, which needs the readings themselves\n`,
    );
    for (const rows of corrected)
      process.stdout.write(`${correctedReport(rows, analysis.imported.rulings)}\n`);
    return 0;
  } finally {
    await warehouse.close();
    await database.close();
  }
}

/** Readings of a workshop's sheet would be left out without a word. */
function checkNoOwnReadings({ imported }: Analysis): void {
  const withReadings = imported.files.filter((file) => file.readingsIn > 0).map(({ file }) => file);
  if (withReadings.length > 0)
    throw new UnusableArguments(
      `--data: ${withReadings.join(', ')} holds readings, but with --warehouse these come from the warehouse: load them there, or take the file out`,
    );
}
