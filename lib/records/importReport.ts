/** One file as it was dropped, chosen or read from a folder. */
export interface InputFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Counts and sentences of one import, always rows in = rows used + rows held. */
export interface ImportedFile {
  readonly file: string;
  readonly table: string | null;
  readonly rowsIn: number;
  readonly rowsUsed: number;
  readonly rowsHeld: number;
  readonly readingsIn: number;
  readonly readingsUsed: number;
  readonly readingsHeld: number;
  /** Cells that say in words that nothing was measured. */
  readonly readingsNone: number;
  readonly message: string | null;
}

/** One row or cell that is not used, or that was read with an interpretation. */
export interface Problem {
  readonly file: string;
  readonly row: number;
  readonly column: string;
  readonly raw: string;
  readonly reason: string;
  readonly action: 'held' | 'interpreted';
  /** Held by a doubt only: it can be read, and a person may have it used as it stands. */
  readonly releasable?: true;
}
