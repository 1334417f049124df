import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { max, sum } from 'd3-array';
import { defaultDraws } from '../../analysis/demand/drawnFleet';
import { problemsTable } from '../../analysis/fleetTables';
import type { GroupBy } from '../../analysis/grouping/sisterGroupOf';
import type { ChartThreshold } from '../../stats/charts/thresholdForBudget';
import { programHash } from '../program/programHash.mjs';
import { UnusableArguments } from '../runMain';
import { writeTable } from '../writeTable';
import { type Bundle, bundleOf, bundlesOf } from './bundles';
import { areBelow, fleetThresholds } from './fleetThresholds';
import { mergeParts } from './mergeParts';
import { OutputFiles } from './OutputFiles';
import type { FinishedPart, PartTask, UnusablePart } from './PartTask';
import { PartThreads } from './PartThreads';
import type { DataFolder, Part } from './readDataFolder';
import { type FleetFacts, surveyParts } from './surveyParts';

/** How a partitioned folder is analysed. */
export interface PartsSettings {
  readonly asOf: string | null;
  readonly groupBy: GroupBy;
  readonly out: string;
  readonly threads: number;
  /** Memory of the database of each thread; what does not fit goes to the disk. */
  readonly memory_MB: number;
  /** Bytes of small folders that are analysed together, about; what suits their size if not given. */
  readonly together_bytes?: number;
}

/** What came of it. */
export type PartsOutcome =
  | { readonly ok: true; readonly asOf: string; readonly parts: readonly FinishedPart[] }
  | { readonly ok: false; readonly unusable: readonly UnusablePart[] };

/** A guess of the day can be wrong, then that of the draws; then both are known. */
const mostRounds = 4;

/**
 * Analyses every part of a partitioned folder in threads and writes the tables of the whole fleet: those of the same rows in a
 * flat folder, byte for byte, whatever the number of threads.
 *
 * Finished parts are kept in `.partial` until all are, so that an interrupted run goes on with the rest. Where a part holds
 * nothing that can be used, only problems.csv is written.
 *
 * @throws UnusableArguments if a frame or a unit lies in several parts
 */
export async function analyseParts(data: DataFolder, settings: PartsSettings): Promise<PartsOutcome> {
  const threads = new PartThreads(Math.min(settings.threads, data.parts.length));
  try {
    return await analyseIn(threads, data, settings);
  } finally {
    await threads.end();
  }
}

async function analyseIn(
  threads: PartThreads,
  data: DataFolder,
  settings: PartsSettings,
): Promise<PartsOutcome> {
  const { groupBy, out, memory_MB } = settings;
  const survey = await surveyParts(data, settings.asOf);
  if (survey.split.length > 0) throw splitError(survey.split);
  const partials = join(out, '.partial');
  const version = programHash();
  let { facts } = survey;
  let bundles = await bundlesOf(data.parts, survey.alone, settings.together_bytes);
  for (let round = 0; round < mostRounds; round++) {
    const task = { shared: data.shared, groupBy, facts, version, partials, memory_MB };
    let outcomes = await threads.outcomes(tasksOf(task, bundles));
    if (outcomes.some(({ kind }) => kind === 'apart')) {
      // What could be analysed together is kept and taken up again.
      const partOf = new Map(data.parts.map((part) => [part.name, part]));
      bundles = bundles.flatMap((bundle, place) =>
        outcomes[place]?.kind === 'apart'
          ? bundle.folders.map((name) => bundleOf(partOf.get(name) as Part))
          : [bundle],
      );
      outcomes = await threads.outcomes(tasksOf(task, bundles));
    }
    const unusable = outcomes.filter((outcome) => outcome.kind === 'unusable');
    if (unusable.length > 0) {
      const { name, header } = problemsTable({ problems: [] });
      await writeTable(out, { name, header, rows: unusable.flatMap(({ problems }) => problems) });
      return { ok: false, unusable };
    }
    const parts = outcomes.filter((outcome) => outcome.kind === 'finished');
    const thresholds = fleetThresholds(parts, facts.asOf);
    const found = factsOf(parts, facts, thresholds, settings.asOf);
    if (JSON.stringify(found) === JSON.stringify(facts)) {
      refuseSplitGroups(parts);
      const output = new OutputFiles(out);
      await mergeParts(parts, facts, thresholds, output);
      await output.publish();
      await rm(partials, { recursive: true });
      return { ok: true, asOf: facts.asOf, parts };
    }
    facts = found;
  }
  throw new Error(
    `analyseParts requires parts that agree on a day, got others in each of ${mostRounds} rounds`,
  );
}

function tasksOf(task: Omit<PartTask, 'part'>, bundles: readonly Bundle[]): readonly PartTask[] {
  return bundles.map((part) => ({ ...task, part }));
}

/** The facts as the imports found them; thresholds that are lower than needed do no harm. */
function factsOf(
  parts: readonly FinishedPart[],
  { asOf: day, leastThresholds }: FleetFacts,
  thresholds: readonly ChartThreshold[],
  asOf: string | null,
): FleetFacts {
  return {
    asOf: asOf ?? max(parts, ({ latestDate }) => latestDate) ?? day,
    draws: defaultDraws(sum(parts, ({ units }) => units)),
    leastThresholds: areBelow(leastThresholds, thresholds) ? leastThresholds : thresholds,
  };
}

function refuseSplitGroups(parts: readonly FinishedPart[]): void {
  const partOf = new Map<string, string>();
  for (const { part, groups } of parts) {
    for (const group of groups) {
      const other = partOf.get(group);
      if (other !== undefined)
        throw splitError([`sister group '${group}' has units in the folders '${other}', '${part}'`]);
      partOf.set(group, part);
    }
  }
}

function splitError(sentences: readonly string[]): UnusableArguments {
  return new UnusableArguments(
    `--data: every folder must hold whole sister groups: ${sentences.join('; ')}. Put their files into one folder`,
  );
}
