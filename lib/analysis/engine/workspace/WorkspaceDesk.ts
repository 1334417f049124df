import type { JournalEntry } from '../../../records/decisions/Decision';
import { withFileNamed } from '../../../records/decisions/withFileNamed';
import { type MergedFiles, mergeFiles } from '../../../records/workspace/mergeFiles';
import { journalConflicts, mergeJournals } from '../../../records/workspace/mergeJournals';
import { PassphraseNeeded, type Workspace, WorkspaceRefused } from '../../../records/workspace/Workspace';
import { readWorkspaceFile, workspaceFile } from '../../../records/workspace/workspaceFile';
import type { OpenOutcome, ReportProgress } from '../EngineApi';
import { failure } from '../failure';
import type { KeptJournal } from '../KeptJournal';
import type { Keeper } from '../kept/Keeper';
import { LooksOn } from '../kept/LooksOn';
import type { OwnFiles } from '../OwnFiles';
import type { WorkspaceChoice, WorkspaceOffer } from './WorkspaceOffer';

/** Saves the whole workspace to one file and opens such files, in place of what is there or merged with it. */
export class WorkspaceDesk {
  /** Read and offered, but not opened. */
  private offered: Workspace | null = null;

  /** @param now ISO date and time, UTC */
  constructor(
    private readonly keeper: Keeper,
    private readonly decided: KeptJournal,
    private readonly own: OwnFiles,
    private readonly now: () => string,
  ) {}

  /** The workspace file of all own files and decisions; sealed if the passphrase is not empty. */
  async save(passphrase: string): Promise<Uint8Array> {
    return workspaceFile(await this.workspace(), this.now(), passphrase);
  }

  /** Reads a workspace file and says what it holds and what merging it would mean; changes nothing. */
  async offer(bytes: Uint8Array, passphrase: string): Promise<WorkspaceOffer> {
    this.offered = null;
    try {
      const theirs = await readWorkspaceFile(bytes, passphrase);
      const ours = await this.workspace();
      const files = await mergeFiles(ours.files, theirs.files);
      this.offered = theirs;
      return {
        status: 'offered',
        files: theirs.files.length,
        entries: theirs.journal.length,
        own: { files: ours.files.length, entries: ours.journal.length },
        merge: {
          added: files.added,
          renamed: [...files.names].flatMap(([name, as]) => (name === as ? [] : [{ name, as }])),
          conflicts: journalConflicts(ours.journal, asNamedIn(files, theirs.journal)),
        },
      };
    } catch (error) {
      if (error instanceof PassphraseNeeded) return { status: 'sealed', message: error.message };
      if (error instanceof WorkspaceRefused) return { status: 'refused', message: error.message };
      throw error;
    }
  }

  /** Opens the offered workspace; null if it holds no files, so that the demo fleet is to be opened. */
  async open(choice: WorkspaceChoice, onProgress: ReportProgress): Promise<OpenOutcome | null> {
    const theirs = this.offered;
    this.offered = null;
    if (theirs === null) return failure(new Error('choose the workspace file again.'), true);
    const { files, journal } = choice.how === 'replace' ? theirs : await this.merged(theirs, choice.choices);
    if (files.length > 0) return this.own.replace(files, journal, onProgress);
    if ((await this.keeper.keep({ files, journal, source: 'demo' })) === 'looks on')
      return failure(new LooksOn(), true);
    this.own.leave();
    return null;
  }

  private async merged(
    theirs: Workspace,
    choices: Extract<WorkspaceChoice, { how: 'merge' }>['choices'],
  ): Promise<Workspace> {
    const ours = await this.workspace();
    const files = await mergeFiles(ours.files, theirs.files);
    const journal = mergeJournals(
      ours.journal,
      asNamedIn(files, theirs.journal),
      new Map(choices),
      await this.decided.signature(),
    );
    return { files: files.files, journal };
  }

  private async workspace(): Promise<Workspace> {
    return { files: await this.own.files(), journal: await this.decided.entries() };
  }
}

/** Their journal with the names that their files have in the merged set. */
function asNamedIn({ names }: MergedFiles, journal: readonly JournalEntry[]): readonly JournalEntry[] {
  const nameOf = (file: string) => names.get(file) ?? file;
  return journal.map((entry) => ({
    ...entry,
    decision: withFileNamed(entry.decision, nameOf),
    before: entry.before === null ? null : withFileNamed(entry.before, nameOf),
  }));
}
