import type { KeptName } from './keptValues';

/** Why something is not kept in this browser. */
export interface NotKept {
  /** The storage is full; the browser refuses to keep anything; another tab has written in the meantime. */
  readonly cause: 'full' | 'refused' | 'elsewhere';
  /** What the browser said. */
  readonly detail: string;
}

/** A kept value that could not be read and lies aside. */
export interface SetAside {
  readonly name: KeptName;
  readonly parts: number | null;
  readonly reason: string;
}

/** How it stands with what is kept in this browser, as this tab sees it. */
export interface KeptState {
  /** Rises with every change of the rest. */
  readonly number: number;
  /** Whether what a person brought in and decided in this tab is kept. */
  readonly saving: 'saved' | 'saving' | 'not saved';
  readonly notKept: NotKept | null;
  /** Own files and entries of the journal that this tab holds, kept or not. */
  readonly files: number;
  readonly entries: number;
  /** Whether this tab writes, or looks on while another one does. */
  readonly writes: boolean;
  /** Another tab has taken writing over from this one. */
  readonly takenOver: boolean;
  /** What is kept is newer than what this tab holds. */
  readonly changedElsewhere: boolean;
  readonly aside: readonly SetAside[];
}
