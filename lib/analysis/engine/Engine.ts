import type {
  AcknowledgementDecision,
  Decision,
  JournalEntry,
  MeaningDecision,
} from '../../records/decisions/Decision';
import { answersOf, decisionsInForce } from '../../records/decisions/journal';
import { decisionsForReading } from '../../records/decisions/tableEdits';
import type { InputFile } from '../../records/importReport';
import { lineOfFile } from '../../records/intake/lineOfFile';
import type { Database } from '../../store/Connector';
import { previewSheet, type SheetPreview } from '../../store/intake/previewSheet';
import type { GroupWork } from '../groupWork';
import { AnswersBefore, type PreparedAnswer } from './AnswersBefore';
import { type Effect, EffectOfDecisions } from './EffectOfDecisions';
import type { DroppedFile, EngineApi, OpenOutcome, ReportProgress } from './EngineApi';
import { answerTo } from './FleetAnswers';
import type { FleetAnswer, FleetQuestion, QuestionWords } from './FleetQuestions';
import { KeptJournal } from './KeptJournal';
import { browserStore } from './kept/browserStore';
import { Keeper } from './kept/Keeper';
import type { KeptState } from './kept/KeptState';
import type { KeptStore } from './kept/KeptStore';
import { LastAnswer } from './kept/LastAnswer';
import { OnlyTab, type Tabs } from './kept/Tabs';
import { LazyDatabase } from './LazyDatabase';
import { OpenFleet } from './OpenFleet';
import { OwnFiles } from './OwnFiles';
import type { PackedFleet } from './PackedFleet';
import { WorkspaceDesk } from './workspace/WorkspaceDesk';
import type { WorkspaceChoice, WorkspaceOffer } from './workspace/WorkspaceOffer';

/** Where the engine gets what lies outside it. */
export interface EngineSources {
  openDatabase(): Promise<Database>;
  demoFiles(): Promise<readonly InputFile[]>;
  /** ISO date and time, UTC, for the journal. */
  now(): string;
  /** Where fits and margins are computed; one after another on the engine's own thread if not given. */
  readonly work?: GroupWork;
  /** The answer that was prepared from the demo files with the site. */
  readonly demoAnswer?: PreparedAnswer;
  /** Version of the site, by which an answer of last time is known to be one of this program. */
  readonly version?: string | null;
  /** Where data are kept between visits; this browser if not given. */
  readonly store?: KeptStore;
  /** Other tabs of this browser; none if not given. */
  readonly tabs?: Tabs;
}

/** Keeps one analysed fleet open; a failed or cancelled attempt leaves it as it was. */
export class Engine implements EngineApi {
  private readonly keeper: Keeper;
  private readonly decided: KeptJournal;
  private readonly database: LazyDatabase;
  private readonly current: OpenFleet;
  private readonly own: OwnFiles;
  private readonly desk: WorkspaceDesk;
  private readonly before: AnswersBefore;
  private readonly effects: EffectOfDecisions;

  constructor(private readonly sources: EngineSources) {
    this.database = new LazyDatabase(sources.openDatabase);
    const { store = browserStore(), tabs = new OnlyTab(), version = null, now } = sources;
    this.keeper = new Keeper(store, tabs, now);
    this.decided = new KeptJournal(this.keeper, now);
    this.current = new OpenFleet(this.database, sources.work);
    this.effects = new EffectOfDecisions(this.database);
    const lastAnswer = new LastAnswer(store, this.keeper, version);
    this.before = new AnswersBefore(lastAnswer, sources.demoAnswer ?? null);
    this.own = new OwnFiles(this.keeper, this.decided, this.current, lastAnswer);
    this.desk = new WorkspaceDesk(this.keeper, this.decided, this.own, now);
  }

  async open(onProgress: ReportProgress): Promise<OpenOutcome> {
    if (await this.keeper.refresh()) this.own.leave();
    return (await this.keeper.get('source')) === 'own' && (await this.keeper.get('files')).length > 0
      ? this.openOwn(onProgress)
      : this.openDemo(onProgress);
  }

  async lastFleet(): Promise<PackedFleet | null> {
    return this.before.fleet();
  }

  async openDemo(onProgress: ReportProgress): Promise<OpenOutcome> {
    const outcome = await this.current.open('demo', () => this.sources.demoFiles(), [], onProgress);
    if (outcome.ok) await this.keeper.keep({ source: 'demo' });
    return outcome;
  }

  async openOwn(onProgress: ReportProgress): Promise<OpenOutcome> {
    return this.own.open(await this.keeper.get('files'), onProgress);
  }

  async addFiles(dropped: readonly DroppedFile[], onProgress: ReportProgress): Promise<OpenOutcome> {
    return this.own.add(dropped, onProgress);
  }

  async removeFiles(names: readonly string[], onProgress: ReportProgress): Promise<OpenOutcome> {
    const left = (await this.own.files()).filter(({ name }) => !names.includes(name));
    return left.length === 0 ? this.forgetOwn(onProgress) : this.own.open(left, onProgress);
  }

  async heldRows(): Promise<string> {
    return this.current.heldRows();
  }

  async fileLine(file: string, line: number): Promise<string | null> {
    const found = (await this.own.files()).find((one) => one.name === file);
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
    return this.own.openAgain(onProgress);
  }

  async takeBack(ids: readonly string[], onProgress: ReportProgress): Promise<OpenOutcome> {
    await this.decided.takeBack(ids);
    return this.own.openAgain(onProgress);
  }

  async undo(step: number, onProgress: ReportProgress): Promise<OpenOutcome> {
    await this.decided.undo(step);
    return this.own.openAgain(onProgress);
  }

  async redo(step: number, onProgress: ReportProgress): Promise<OpenOutcome> {
    await this.decided.redo(step);
    return this.own.openAgain(onProgress);
  }

  async undoNotes(step: number): Promise<void> {
    await this.decided.undo(step);
  }

  async redoNotes(step: number): Promise<void> {
    await this.decided.redo(step);
  }

  async note(decisions: readonly AcknowledgementDecision[]): Promise<void> {
    await this.decided.decide(decisions);
  }

  async takeNotesBack(ids: readonly string[]): Promise<void> {
    await this.decided.takeBack(ids);
  }

  async preview(file: string, meanings: readonly MeaningDecision[]): Promise<SheetPreview> {
    const files = await this.own.files();
    const decisions = decisionsInForce(await this.decided.with(meanings));
    const connector = await this.database.connect();
    try {
      return await previewSheet(connector, files, file, { answers: answersOf(decisions), decisions });
    } finally {
      await connector.close();
    }
  }

  async effect(decisions: readonly Decision[]): Promise<Effect> {
    const { answers } = this.current;
    if (answers?.analysis.fleet.source !== 'own')
      throw new Error('None of your files is open: add them on the Records page first.');
    const journal = await this.decided.with(decisions);
    return this.effects.of(answers, await this.own.files(), decisionsForReading(journal));
  }

  async stopEffect(): Promise<void> {
    this.effects.stop();
  }

  async journal(): Promise<readonly JournalEntry[]> {
    return this.decided.entries();
  }

  async forgetOwn(onProgress: ReportProgress): Promise<OpenOutcome> {
    this.own.leave();
    await this.keeper.keep({ files: [], journal: [], source: 'demo' });
    return this.openDemo(onProgress);
  }

  async saveWorkspace(passphrase: string): Promise<Uint8Array> {
    return this.desk.save(passphrase);
  }

  async offerWorkspace(bytes: ArrayBuffer, passphrase: string): Promise<WorkspaceOffer> {
    return this.desk.offer(new Uint8Array(bytes), passphrase);
  }

  async openWorkspace(choice: WorkspaceChoice, onProgress: ReportProgress): Promise<OpenOutcome> {
    const opened = await this.desk.open(choice, onProgress);
    return opened ?? this.openDemo(onProgress);
  }

  async takeOver(onProgress: ReportProgress): Promise<OpenOutcome> {
    await this.keeper.takeOver();
    const { fleet } = this.current;
    if (fleet === null || (await this.keeper.refresh())) {
      this.own.leave();
      return this.open(onProgress);
    }
    return { ok: true, fleet, message: 'This tab writes now; the other one looks on.' };
  }

  /** Whether acts of this tab may change what is kept. */
  async mayWrite(): Promise<boolean> {
    return this.keeper.mayWrite();
  }

  async keptState(after: number): Promise<KeptState> {
    return this.keeper.state(after);
  }

  async cancel(): Promise<void> {
    this.current.cancel();
  }

  async ownFileNames(): Promise<readonly string[]> {
    return (await this.keeper.get('files')).map((file) => file.name);
  }

  async ask<Name extends FleetQuestion>(
    question: Name,
    words: QuestionWords<Name>,
  ): Promise<FleetAnswer<Name> | undefined> {
    const { answers } = this.current;
    if (answers !== null) {
      // What was opened is safe before anything long is computed of it.
      await this.keeper.written();
      return answerTo(answers, question, words);
    }
    return this.before.to(question, words) as FleetAnswer<Name> | undefined;
  }
}
