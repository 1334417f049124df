import { z } from 'zod';
import type { Decision } from '../records/decisions/Decision';
import { answersOf } from '../records/decisions/journal';
import type { InputFile } from '../records/importReport';
import type { Connector } from '../store/Connector';
import { type ImportedData, importFiles } from '../store/importFiles';
import { queryRows } from '../store/queryRows';
import { latestDate, limitsInForce, runsNow } from '../store/questions';
import { fleetMargins } from './fleetMargins';
import { type GroupFit, groupFits } from './groupFits';
import { type GroupBy, groupTableOf } from './grouping/sisterGroupOf';
import { type GroupWork, workHere } from './groupWork';
import { type QuestionIndex, questionIndex } from './questionIndex';
import { type RunSource, runsInStore } from './RunSource';
import type { FleetResult, Progress, UnderstoodSheet } from './types';
import { type UnitNow, unitNow, yearsAhead } from './unitNow';
import { positionsOn, writeGroups } from './unitsOnDay';

/** Choices of the analysis. */
export interface AnalysisSettings {
  /** YYYY-MM-DD; the latest date in the data if null. */
  readonly asOf: string | null;
  readonly groupBy: GroupBy;
  /** How many problems the result lists at the most; all if not given. */
  readonly problemsListed?: number;
  /** Where runs come from if not from the readings of the files. */
  readonly runs?: RunSource;
  /** Where fits and margins are computed if not one after another where the analysis runs. */
  readonly work?: GroupWork;
  /** Margins of series without a limit are left out: pages ask for them unit by unit. */
  readonly limitedOnly?: boolean;
  /** Chances by quarter, which pictures need and files do not hold, are left out. */
  readonly withoutQuarters?: boolean;
  /** What was decided about these files in earlier openings. */
  readonly decisions?: readonly Decision[];
}

/** An analysed fleet with what the Unit page computes from. */
export interface Analysis {
  readonly connector: Connector;
  readonly fleet: FleetResult;
  readonly units: ReadonlyMap<string, UnitNow>;
  readonly fits: ReadonlyMap<string, GroupFit>;
  readonly index: QuestionIndex;
  readonly imported: ImportedData;
  readonly groupBy: GroupBy;
  /** Table of the sister group of every unit: unit, group. */
  readonly groupTable: string;
  readonly limitedOnly: boolean;
  readonly runs: RunSource;
  readonly work: GroupWork;
}

/** What an analysis of the same records is asked for. */
interface Asked
  extends Pick<AnalysisSettings, 'asOf' | 'groupBy' | 'limitedOnly' | 'withoutQuarters' | 'runs' | 'work'> {
  /** The day whose group tables lie beside those of what is open. */
  readonly ofDay?: string;
}

/** The files hold nothing that can be analysed; the report says why for each. */
export class NoUsableReadings extends Error {
  constructor(
    message: string,
    readonly imported: ImportedData,
  ) {
    super(message);
    this.name = 'NoUsableReadings';
  }
}

/** Reports a step and lets other messages in; throws to stop the work. */
export type OnProgress = (progress: Progress) => Promise<void>;

/**
 * Takes files in and computes every group's fit and every unit's margins.
 *
 * @throws NoUsableReadings if no reading of the files can be used
 */
export async function openAnalysis(
  connector: Connector,
  files: readonly InputFile[],
  source: FleetResult['source'],
  settings: AnalysisSettings,
  onProgress: OnProgress,
): Promise<Analysis> {
  const imported = await importFiles(
    connector,
    files,
    (step, share) => onProgress({ step, share: 0.4 * share }),
    {
      answers: answersOf(settings.decisions ?? []),
      decisions: settings.decisions ?? [],
      ...(settings.problemsListed === undefined ? {} : { problemsListed: settings.problemsListed }),
    },
  );
  if (imported.readingsUsed === 0 && settings.runs === undefined)
    throw new NoUsableReadings('No reading in these files can be used.', imported);
  return analyse(connector, imported, source, settings, onProgress);
}

/** The same records with units put together in another way; nothing is read again. */
export async function regrouped(
  { connector, fleet, imported, limitedOnly, runs, work }: Analysis,
  groupBy: GroupBy,
  onProgress: OnProgress,
): Promise<Analysis> {
  return analyse(
    connector,
    imported,
    fleet.source,
    { asOf: fleet.asOf, groupBy, limitedOnly, runs, work },
    onProgress,
  );
}

/** The same records as they stood on another day: later overhauls and readings are left out; nothing is read again. */
export async function onDay(
  { connector, fleet, imported, groupBy, limitedOnly, runs, work }: Analysis,
  asOf: string,
  onProgress: OnProgress,
): Promise<Analysis> {
  return analyse(
    connector,
    imported,
    fleet.source,
    { asOf, groupBy, limitedOnly, runs, work, ofDay: asOf },
    onProgress,
  );
}

async function analyse(
  connector: Connector,
  imported: ImportedData,
  source: FleetResult['source'],
  {
    asOf: day,
    groupBy,
    limitedOnly = false,
    withoutQuarters = false,
    runs = runsInStore,
    work = workHere,
    ofDay,
  }: Asked,
  onProgress: OnProgress,
): Promise<Analysis> {
  const asOf = day ?? (await latestDate(connector)) ?? '1970-01-01';
  const positions = await positionsOn(connector, asOf);
  const units = new Map(positions.map((position) => [position.unit, unitNow(position, groupBy, asOf)]));
  const groupTable = await writeGroups(connector, groupTableOf(groupBy, ofDay), units);
  const fits = await groupFits(connector, groupTable, await runs(connector, asOf), work, (name, share) =>
    onProgress({ step: `Fitting wear of ${name}`, share: 0.4 + 0.5 * share }),
  );
  const index = questionIndex(
    fits,
    await runsNow(connector, asOf),
    await limitsInForce(connector, asOf),
    asOf,
    withoutQuarters ? 0 : yearsAhead * 4,
  );
  await onProgress({ step: 'Forecasting margins', share: 0.92 });
  const margins = await fleetMargins(units, index, limitedOnly, work, (share) =>
    onProgress({ step: 'Forecasting margins', share: 0.92 + 0.08 * share }),
  );
  const characteristics = await queryRows(
    connector,
    'SELECT characteristic AS code, name FROM all_characteristics ORDER BY code',
    z.object({ code: z.string(), name: z.string() }),
  );
  const fleet: FleetResult = {
    asOf,
    source,
    units: [...units.values()].map((unit) => unit.row),
    fits: [...fits.values()].map((fit) => fit.row),
    margins,
    quarters: index.quarters.map(({ date }) => date),
    files: imported.files,
    problems: imported.problems,
    problemsFound: imported.problemsFound,
    questions: imported.questions,
    sheets: sheetsOf(imported),
    characteristics,
  };
  return {
    connector,
    fleet,
    units,
    fits,
    index,
    imported,
    groupBy,
    groupTable,
    limitedOnly,
    runs,
    work,
  };
}

/** How each workshop's sheet was understood, column by column. */
export function sheetsOf(imported: Pick<ImportedData, 'sheets'>): readonly UnderstoodSheet[] {
  return [...imported.sheets].map(([file, sheet]) => ({ file, ...sheet }));
}
