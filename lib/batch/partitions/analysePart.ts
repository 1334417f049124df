import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { problemsTable } from '../../analysis/fleetTables';
import { NoUsableReadings, openAnalysis } from '../../analysis/openAnalysis';
import type { InputFile } from '../../records/importReport';
import { latestDate } from '../../store/questions';
import { unusableReasons } from '../unusableReasons';
import { mustBeApart } from './mustBeApart';
import type { FinishedPart, PartOutcome, PartTask } from './PartTask';
import { partResult } from './partResult';
import { finishedPart, keepPart } from './partStore';
import { readDataFile, UnreadableFile } from './readDataFile';
import { threadDatabase } from './threadDatabase';

/** Analyses one part, or several together, and keeps their results; those of the same bytes, settings and program that are kept already are taken up. */
export async function analysePart(task: PartTask): Promise<PartOutcome> {
  const { part } = task;
  const files: InputFile[] = [];
  try {
    for (const file of [...task.shared, ...part.files]) files.push(await readDataFile(file));
  } catch (error) {
    if (!(error instanceof UnreadableFile)) throw error;
    if (part.folders.length > 1) return { kind: 'apart' };
    return { kind: 'unusable', part: part.name, reasons: [error.message], problems: [] };
  }
  const folder = join(task.partials, hashOf(task, files));
  return (await finishedPart(folder)) ?? analyseFiles(task, folder, files);
}

function hashOf({ part, groupBy, facts, version }: PartTask, files: readonly InputFile[]): string {
  const hash = createHash('sha256').update(JSON.stringify([part.name, groupBy, facts, version]));
  for (const { name, bytes } of files) hash.update(`\0${name}\0${bytes.length}\0`).update(bytes);
  return hash.digest('hex').slice(0, 32);
}

async function analyseFiles(
  task: PartTask,
  folder: string,
  files: readonly InputFile[],
): Promise<PartOutcome> {
  const { part, facts, groupBy } = task;
  const connector = await (await threadDatabase(task)).connect();
  try {
    const settings = { asOf: facts.asOf, groupBy, withoutQuarters: true };
    const analysis = await openAnalysis(connector, files, 'own', settings, async () => {});
    if (await mustBeApart(analysis, part)) return { kind: 'apart' };
    const result = await partResult(analysis, facts);
    const { fleet } = analysis;
    const finished: FinishedPart = {
      kind: 'finished',
      part: part.name,
      folders: part.folders,
      folder,
      latestDate: (await latestDate(connector)) ?? facts.asOf,
      firstCharted: result.charted.last === '' ? null : result.charted.first,
      lastCharted: result.charted.last || null,
      histories: result.histories,
      units: fleet.units.length,
      groups: [...new Set(fleet.units.map(({ group }) => group))],
      readingsUsed: fleet.files.reduce((sum, file) => sum + file.readingsUsed, 0),
      readingsHeld: fleet.files.reduce((sum, file) => sum + file.readingsHeld, 0),
    };
    await keepPart(finished, result);
    return finished;
  } catch (error) {
    if (!(error instanceof NoUsableReadings)) throw error;
    if (part.folders.length > 1) return { kind: 'apart' };
    const reasons = unusableReasons(error);
    return { kind: 'unusable', part: part.name, reasons, problems: problemsTable(error.imported).rows };
  } finally {
    await connector.close();
  }
}
