import { correctedReport, partCorrected, rulingsIn } from '../../records/decisions/correctedFiles';
import type {
  AcknowledgementDecision,
  Decision,
  JournalEntry,
  MeaningDecision,
} from '../../records/decisions/Decision';
import { answersOf, decisionsInForce } from '../../records/decisions/journal';
import type { CorrectedRows } from '../../records/decisions/readHeldRowsCsv';
import type { RulingOutcome } from '../../records/decisions/rulings';
import type { InputFile } from '../../records/importReport';
import { lineOfFile } from '../../records/intake/lineOfFile';
import { withUniqueNames } from '../../records/uniqueNames';
import type { Database } from '../../store/Connector';
import { previewSheet, type SheetPreview } from '../../store/intake/previewSheet';
import { NoUsableReadings, openAnalysis } from '../openAnalysis';
import type { FleetResult, Progress } from '../types';
import type { DroppedFile, EngineApi, OpenOutcome, ReportProgress } from './EngineApi';
import { answerTo, FleetAnswers } from './FleetAnswers';
import type { FleetAnswer, FleetQuestion, QuestionWords } from './FleetQuestions';
import { Cancelled, failure } from './failure';
import { heldCsv } from './heldCsv';
import { KeptJournal } from './KeptJournal';
import { keep, kept } from './keptStore';
import { LazyDatabase } from './LazyDatabase';

/** Where the engine gets what lies outside it. */
export interface EngineSources {
  openDatabase(): Promise<Database>;
  demoFiles(): Promise<readonly InputFile[]>;
  /** ISO date and time, UTC, for the journal. */
  now(): string;
}

/** Problems that a page lists; the others are counted, and all are in the batch command's problems.csv. */
const problemsListed = 5_000;

const nothingToCorrect =
  'it corrects held rows, and none of your files is open. Add them first, or together with it';

/** Gives messages that wait for the worker, a cancel among them, their turn. */
function yieldToMessages(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** Keeps one analysed fleet open; a failed or cancelled attempt leaves it as it was. */
export class Engine implements EngineApi {
  private opened: FleetAnswers | null = null;
  /** Own files of the last attempt: what decisions are about, even if nothing could be used without them. */
  private ownFiles: readonly InputFile[] | null = null;
  private attempt = 0;
  /** What came of the rulings when files were read last. */
  private rulings: readonly RulingOutcome[] = [];
  /** Held rows of the last attempt as CSV, if it opened nothing. */
  private attemptHeld: string | null = null;

  private readonly decided: KeptJournal;

  private readonly database: LazyDatabase;

  constructor(private readonly sources: EngineSources) {
    this.database = new LazyDatabase(sources.openDatabase);
    this.decided = new KeptJournal(sources.now);
  }

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
    const { files, corrected } = partCorrected(
      dropped.map((file) => ({ name: file.name, bytes: new Uint8Array(file.bytes) })),
      await this.initials(),
    );
    const added = withUniqueNames(files);
    const names = new Set(added.map((file) => file.name));
    // Adding goes on from the own files that are open; from the demo fleet it starts afresh.
    const before = this.opened?.analysis.fleet.source === 'own' ? await kept('files') : [];
    if (corrected.length === 0)
      return this.tryOwn([...before.filter((file) => !names.has(file.name)), ...added], onProgress);
    const known = before.length > 0 ? before : await this.files();
    return this.withCorrected(
      [...known.filter((file) => !names.has(file.name)), ...added],
      corrected,
      onProgress,
    );
  }

  /** Opens files with the rulings of corrected held rows, and reports what came of each line. */
  private async withCorrected(
    files: readonly InputFile[],
    corrected: readonly CorrectedRows[],
    onProgress: ReportProgress,
  ): Promise<OpenOutcome> {
    if (files.length === 0) return failure(new Error(nothingToCorrect), this.opened !== null);
    await this.decided.decide(rulingsIn(corrected));
    this.rulings = [];
    const outcome = await this.tryOwn(files, onProgress);
    const reports = corrected.map((rows) => correctedReport(rows, this.rulings));
    return {
      ...outcome,
      message: [...reports, ...(outcome.message === null ? [] : [outcome.message])].join(' '),
    };
  }

  async heldRows(): Promise<string> {
    return this.attemptHeld ?? heldCsv(this.opened?.analysis.connector);
  }

  async fileLine(file: string, line: number): Promise<string | null> {
    const found = (await this.files()).find((one) => one.name === file);
    return found === undefined ? null : lineOfFile(found.bytes, line);
  }

  async initials(): Promise<string> {
    return this.decided.initials();
  }

  async signAs(initials: string): Promise<void> {
    await this.decided.signAs(initials);
  }

  async decide(decisions: readonly Decision[], onProgress: ReportProgress): Promise<OpenOutcome> {
    await this.decided.decide(decisions);
    return this.openAgain(onProgress);
  }

  async takeBack(ids: readonly string[], onProgress: ReportProgress): Promise<OpenOutcome> {
    await this.decided.takeBack(ids);
    return this.openAgain(onProgress);
  }

  async note(decisions: readonly AcknowledgementDecision[]): Promise<void> {
    await this.decided.decide(decisions);
  }

  async takeNotesBack(ids: readonly string[]): Promise<void> {
    await this.decided.takeBack(ids);
  }

  async preview(file: string, meanings: readonly MeaningDecision[]): Promise<SheetPreview> {
    const files = await this.files();
    const decisions = decisionsInForce(await this.decided.with(meanings));
    const connector = await this.database.connect();
    try {
      return await previewSheet(connector, files, file, { answers: answersOf(decisions), decisions });
    } finally {
      await connector.close();
    }
  }

  async journal(): Promise<readonly JournalEntry[]> {
    return this.decided.entries();
  }

  async forgetOwn(onProgress: ReportProgress): Promise<OpenOutcome> {
    this.ownFiles = null;
    await keep('files', []);
    await this.decided.forget();
    return this.openDemo(onProgress);
  }

  /** Own files of the last attempt, else those kept. */
  private async files(): Promise<readonly InputFile[]> {
    return this.ownFiles ?? (await kept('files'));
  }

  /** Opens own files with what is decided by now. */
  private async openAgain(onProgress: ReportProgress): Promise<OpenOutcome> {
    const files = await this.files();
    if (files.length === 0 && this.opened !== null)
      return {
        ok: true,
        fleet: this.opened.analysis.fleet,
        message: 'Kept in this browser for files of the same shape: add yours.',
      };
    return this.tryOwn(files, onProgress);
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

  async ask<Name extends FleetQuestion>(
    question: Name,
    words: QuestionWords<Name>,
  ): Promise<FleetAnswer<Name> | undefined> {
    return this.opened === null ? undefined : answerTo(this.opened, question, words);
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
      const connector = await this.database.connect();
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
        this.opened = new FleetAnswers(analysis, yieldToMessages);
        this.rulings = analysis.imported.rulings;
        this.attemptHeld = null;
        await previous?.analysis.connector.close();
        await keep('source', source);
        return { ok: true, fleet: analysis.fleet, message: null };
      } catch (error) {
        if (error instanceof NoUsableReadings) {
          this.rulings = error.imported.rulings;
          this.attemptHeld = await heldCsv(connector);
        }
        await connector.close();
        throw error;
      }
    } catch (error) {
      return failure(error, this.opened !== null);
    }
  }
}
