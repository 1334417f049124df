import type { Decision, JournalEntry } from '../../records/decisions/Decision';
import { decisionsInForce, withDecisions, withTakenBack } from '../../records/decisions/journal';
import type { InputFile } from '../../records/importReport';
import { withUniqueNames } from '../../records/uniqueNames';
import type { Database } from '../../store/Connector';
import { type Analysis, NoUsableReadings, openAnalysis, sheetsOf } from '../openAnalysis';
import type { FleetResult, Progress, UnitResult } from '../types';
import { unitResult } from '../unitResult';
import type { DroppedFile, EngineApi, OpenOutcome, ReportProgress } from './EngineApi';
import { keep, kept } from './keptStore';

/** Where the engine gets what lies outside it. */
export interface EngineSources {
  openDatabase(): Promise<Database>;
  demoFiles(): Promise<readonly InputFile[]>;
  /** ISO date and time, UTC, for the journal. */
  now(): string;
}

/** Problems that a page lists; the others are counted, and all are in the batch command's problems.csv. */
const problemsListed = 5_000;

class Cancelled extends Error {}

/** Gives messages that wait for the worker, a cancel among them, their turn. */
function yieldToMessages(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** Keeps one analysed fleet open; a failed or cancelled attempt leaves it as it was. */
export class Engine implements EngineApi {
  private database: Promise<Database> | null = null;
  private opened: Analysis | null = null;
  /** Own files of the last attempt: what decisions are about, even if nothing could be used without them. */
  private ownFiles: readonly InputFile[] | null = null;
  /** The journal, in case the browser keeps none. */
  private written: readonly JournalEntry[] | null = null;
  private attempt = 0;

  constructor(private readonly sources: EngineSources) {}

  async open(onProgress: ReportProgress): Promise<OpenOutcome> {
    return (await kept('source')) === 'own' && (await kept('files')).length > 0
      ? this.openOwn(onProgress)
      : this.openDemo(onProgress);
  }

  async openDemo(onProgress: ReportProgress): Promise<OpenOutcome> {
    return this.try('demo', () => this.sources.demoFiles(), onProgress);
  }

  async openOwn(onProgress: ReportProgress): Promise<OpenOutcome> {
    return this.tryOwn(await kept('files'), onProgress);
  }

  async addFiles(dropped: readonly DroppedFile[], onProgress: ReportProgress): Promise<OpenOutcome> {
    const added = withUniqueNames(
      dropped.map((file) => ({ name: file.name, bytes: new Uint8Array(file.bytes) })),
    );
    const names = new Set(added.map((file) => file.name));
    // Adding goes on from the own files that are open; from the demo fleet it starts afresh.
    const before = this.opened?.fleet.source === 'own' ? await kept('files') : [];
    return this.tryOwn([...before.filter((file) => !names.has(file.name)), ...added], onProgress);
  }

  async decide(decisions: readonly Decision[], onProgress: ReportProgress): Promise<OpenOutcome> {
    return this.withJournal(withDecisions(await this.journal(), decisions, this.signature()), onProgress);
  }

  async takeBack(ids: readonly string[], onProgress: ReportProgress): Promise<OpenOutcome> {
    return this.withJournal(withTakenBack(await this.journal(), ids, this.signature()), onProgress);
  }

  async journal(): Promise<readonly JournalEntry[]> {
    this.written ??= await kept('journal');
    return this.written;
  }

  async forgetOwn(onProgress: ReportProgress): Promise<OpenOutcome> {
    this.ownFiles = null;
    this.written = [];
    await keep('files', []);
    await keep('journal', []);
    return this.openDemo(onProgress);
  }

  private signature() {
    return { at: this.sources.now(), by: '' };
  }

  private async withJournal(
    journal: readonly JournalEntry[],
    onProgress: ReportProgress,
  ): Promise<OpenOutcome> {
    this.written = journal;
    await keep('journal', journal);
    return this.tryOwn(this.ownFiles ?? (await kept('files')), onProgress);
  }

  /** Opens own files and, if they can be used, keeps those that were recognised. */
  private async tryOwn(files: readonly InputFile[], onProgress: ReportProgress): Promise<OpenOutcome> {
    this.ownFiles = files;
    const outcome = await this.try('own', async () => files, onProgress);
    if (!outcome.ok) return outcome;
    const usable = new Set(
      outcome.fleet.files.filter((file) => file.table !== null).map((file) => file.file),
    );
    const isKept = await keep(
      'files',
      files.filter((file) => usable.has(file.name)),
    );
    const message = isKept
      ? outcome.message
      : 'This browser does not keep the files: they are open until the page is closed. Keep the originals at hand.';
    return { ...outcome, message };
  }

  async cancel(): Promise<void> {
    this.attempt++;
  }

  async ownFileNames(): Promise<readonly string[]> {
    return (await kept('files')).map((file) => file.name);
  }

  async unit(unit: string): Promise<UnitResult | null> {
    return this.opened === null ? null : unitResult(this.opened, unit);
  }

  private async try(
    source: FleetResult['source'],
    files: () => Promise<readonly InputFile[]>,
    onProgress: ReportProgress,
  ): Promise<OpenOutcome> {
    const attempt = ++this.attempt;
    const report = async (progress: Progress): Promise<void> => {
      onProgress(progress);
      await yieldToMessages();
      if (this.attempt !== attempt) throw new Cancelled();
    };
    try {
      await report({ step: 'Starting the database engine', share: 0 });
      this.database ??= this.sources.openDatabase().catch((error: unknown) => {
        // The next attempt starts the engine anew.
        this.database = null;
        throw error;
      });
      const connector = await (await this.database).connect();
      try {
        const analysis = await openAnalysis(
          connector,
          await files(),
          source,
          {
            asOf: null,
            groupBy: 'frame',
            problemsListed,
            decisions: source === 'own' ? decisionsInForce(await this.journal()) : [],
          },
          report,
        );
        const previous = this.opened;
        this.opened = analysis;
        await previous?.connector.close();
        await keep('source', source);
        return { ok: true, fleet: analysis.fleet, message: null };
      } catch (error) {
        await connector.close();
        throw error;
      }
    } catch (error) {
      return failure(error, this.opened !== null);
    }
  }
}

function failure(error: unknown, hasOpen: boolean): OpenOutcome {
  const stands = hasOpen ? 'What was open before is still open.' : 'No data are open.';
  if (error instanceof Cancelled)
    return {
      ok: false,
      message: `Stopped. ${stands}`,
      files: [],
      problems: [],
      problemsFound: 0,
      questions: [],
      sheets: [],
    };
  if (error instanceof NoUsableReadings) {
    const { files, problems, problemsFound, questions } = error.imported;
    return {
      ok: false,
      message: `${error.message} ${whyNone(error)} ${stands}`,
      files,
      problems,
      problemsFound,
      questions,
      sheets: sheetsOf(error.imported),
    };
  }
  const reason = error instanceof Error ? error.message : String(error);
  return {
    ok: false,
    message: `This could not be opened: ${reason}`,
    files: [],
    problems: [],
    problemsFound: 0,
    questions: [],
    sheets: [],
  };
}

/** What to do about files without a usable reading, from what they held. */
function whyNone(error: NoUsableReadings): string {
  const { files } = error.imported;
  if (files.length === 0) return 'No file was given.';
  if (files.every((file) => file.table === null))
    return files.length === 1
      ? (files[0]?.message ?? '')
      : 'None of the files was recognised: see the reason beside each.';
  if (files.every((file) => file.readingsIn === 0))
    return 'There are tables but no readings: add readings.csv and overhauls.csv, or a sheet with one row an overhaul.';
  return error.imported.questions.length > 0
    ? 'Every reading waits for an answer: see the questions.'
    : 'Every reading is held: see the reasons below.';
}
