import { correctedReport, partCorrected, rulingsIn } from '../../records/decisions/correctedFiles';
import type { JournalEntry } from '../../records/decisions/Decision';
import type { CorrectedRows } from '../../records/decisions/readHeldRowsCsv';
import { decisionsForReading } from '../../records/decisions/tableEdits';
import type { InputFile } from '../../records/importReport';
import { withUniqueNames } from '../../records/uniqueNames';
import type { DroppedFile, OpenOutcome, ReportProgress } from './EngineApi';
import { failure, nothingRead } from './failure';
import type { KeptJournal } from './KeptJournal';
import type { Keeper } from './kept/Keeper';
import type { LastAnswer } from './kept/LastAnswer';
import type { OpenFleet } from './OpenFleet';

const nothingToCorrect =
  'it corrects held rows, and none of your files is open. Add them first, or together with it';
const looksOn =
  'Another tab has taken over writing meanwhile: this is open here until the page is closed, and not kept in this browser.';

/** The journal that files are opened with, and that is kept with them. */
type JournalToKeep = () => Promise<readonly JournalEntry[]>;

/** The user's own files: those of the last attempt, opened with what is decided about them, and kept in this browser. */
export class OwnFiles {
  /** What decisions are about, even if nothing could be used without them. */
  private ofAttempt: readonly InputFile[] | null = null;

  constructor(
    private readonly keeper: Keeper,
    private readonly decided: KeptJournal,
    private readonly current: OpenFleet,
    private readonly lastAnswer: LastAnswer,
  ) {}

  /** Own files of the last attempt, else those kept. */
  async files(): Promise<readonly InputFile[]> {
    return this.ofAttempt ?? this.keeper.get('files');
  }

  /** Leaves the last attempt: the files are those kept. */
  leave(): void {
    this.ofAttempt = null;
  }

  /** Opens dropped files with the own ones; corrected held rows become rulings on them. */
  async add(dropped: readonly DroppedFile[], onProgress: ReportProgress): Promise<OpenOutcome> {
    const { files, corrected } = partCorrected(
      dropped.map((file) => ({ name: file.name, bytes: new Uint8Array(file.bytes) })),
      await this.decided.initials(),
    );
    const added = withUniqueNames(files);
    const names = new Set(added.map((file) => file.name));
    // Adding goes on from the own files that are open; from the demo fleet it starts afresh.
    const before = this.current.fleet?.source === 'own' ? await this.keeper.get('files') : [];
    const known = corrected.length > 0 && before.length === 0 ? await this.files() : before;
    const all = [...known.filter((file) => !names.has(file.name)), ...added];
    if (corrected.length === 0) return this.open(all, onProgress);
    if (all.length === 0) return failure(new Error(nothingToCorrect), this.current.fleet !== null);
    return this.openCorrected(all, corrected, added.length > 0, onProgress);
  }

  /** Opens the own files with what is decided by now. */
  async openAgain(onProgress: ReportProgress): Promise<OpenOutcome> {
    const files = await this.files();
    if (files.length === 0 && this.current.fleet !== null)
      return {
        ok: true,
        fleet: this.current.fleet,
        message: 'Kept in this browser for files of the same shape: add yours.',
      };
    return this.open(files, onProgress);
  }

  /** Opens files and, if they can be used, holds those that were recognised, with the journal, to be kept as one act. */
  async open(
    files: readonly InputFile[],
    onProgress: ReportProgress,
    journal: JournalToKeep = () => this.decided.entries(),
  ): Promise<OpenOutcome> {
    this.ofAttempt = files;
    const decisions = decisionsForReading(await journal());
    const outcome = await this.current.open('own', async () => files, decisions, onProgress);
    if (!outcome.ok) return outcome;
    const usable = new Set(
      outcome.fleet.files.filter((file) => file.table !== null).map((file) => file.file),
    );
    const held = await this.keeper.hold({
      files: files.filter((file) => usable.has(file.name)),
      journal: await journal(),
      source: 'own',
    });
    if (held === 'looks on') return { ...outcome, message: await this.messageOfReader(files) };
    // The answer does not wait until large files are on the disk: pages say that they are being saved, and if they are not.
    void held.saving.then((saved) => (saved ? this.lastAnswer.keep(outcome.fleet, decisions) : undefined));
    return outcome;
  }

  /**
   * Opens other files with another journal in place of the own ones, and keeps both as one act. Where nothing of them can be
   * used, they take the place of nothing only; else all stays as it was.
   */
  async replace(
    files: readonly InputFile[],
    journal: readonly JournalEntry[],
    onProgress: ReportProgress,
  ): Promise<OpenOutcome> {
    const before = this.ofAttempt;
    const outcome = await this.open(files, onProgress, async () => journal);
    if (outcome.ok) return outcome;
    const wasRead = outcome.files.length > 0;
    if (wasRead && (await this.keeper.get('files')).length === 0) {
      await this.keeper.keep({ files, journal, source: 'own' });
      return outcome;
    }
    this.ofAttempt = before;
    this.current.leaveAttempt();
    return {
      ok: false,
      message: wasRead
        ? 'The workspace was not opened: no reading in it can be used as it stands. Your own files and decisions are as they were. To open it all the same, remove them first.'
        : outcome.message,
      ...nothingRead,
    };
  }

  /** A tab that looks on and opens what is kept changes nothing; one that has lost writing meanwhile holds more than is kept. */
  private async messageOfReader(files: readonly InputFile[]): Promise<string | null> {
    const kept = new Set(await this.keeper.get('files'));
    return files.every((file) => kept.has(file)) ? null : looksOn;
  }

  /** Opens files with the rulings of corrected held rows, and reports what came of each line. */
  private async openCorrected(
    files: readonly InputFile[],
    corrected: readonly CorrectedRows[],
    withNewFiles: boolean,
    onProgress: ReportProgress,
  ): Promise<OpenOutcome> {
    const rulings = rulingsIn(corrected);
    // Rulings on known files are kept before these are read again; with new files they are one act.
    if (!withNewFiles) await this.decided.decide(rulings);
    this.current.rulings = [];
    const outcome = await this.open(files, onProgress, () => this.decided.with(rulings));
    if (!outcome.ok && outcome.files.length > 0) await this.decided.decide(rulings);
    const reports = corrected.map((rows) => correctedReport(rows, this.current.rulings));
    return {
      ...outcome,
      message: [...reports, ...(outcome.message === null ? [] : [outcome.message])].join(' '),
    };
  }
}
