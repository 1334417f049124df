import type { Conflict, Side } from '../../../records/workspace/mergeJournals';

/** What a workspace file came to before anything is opened; nothing has been changed. */
export type WorkspaceOffer =
  /** It is sealed, and no passphrase or a wrong one was given. */
  | { readonly status: 'sealed'; readonly message: string }
  | { readonly status: 'refused'; readonly message: string }
  | OfferedWorkspace;

/** A workspace that can be opened in place of the own files, or merged with them. */
export interface OfferedWorkspace {
  readonly status: 'offered';
  readonly files: number;
  /** Entries of its journal. */
  readonly entries: number;
  readonly own: { readonly files: number; readonly entries: number };
  readonly merge: {
    /** Names, here, of files that only the workspace has. */
    readonly added: readonly string[];
    /** Files of the workspace that stand under another name here. */
    readonly renamed: readonly { readonly name: string; readonly as: string }[];
    readonly conflicts: readonly Conflict[];
  };
}

/** How an offered workspace is opened; for a merge whose decision holds, by id, where both decided differently. */
export type WorkspaceChoice =
  | { readonly how: 'replace' }
  | { readonly how: 'merge'; readonly choices: readonly (readonly [id: string, side: Side])[] };
