import type { JournalEntry } from '../decisions/Decision';
import type { InputFile } from '../importReport';

/** All that a person has brought in and decided: the files as they were dropped, and the journal. */
export interface Workspace {
  readonly files: readonly InputFile[];
  readonly journal: readonly JournalEntry[];
}

/** A workspace file is not opened; the message says why and what to do. */
export class WorkspaceRefused extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'WorkspaceRefused';
  }
}

/** The file is sealed with a passphrase, and none or a wrong one was given. */
export class PassphraseNeeded extends WorkspaceRefused {}
