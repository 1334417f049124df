/** What a tab knows of the other tabs of this site in the same browser: one of them writes. */
export interface Tabs {
  /** Whether this tab is the one that writes. */
  readonly writes: boolean;
  /** Whether another tab has taken writing over from this one. */
  readonly takenOver: boolean;
  /** Finds out whether this tab may write. */
  join(listener: TabsListener): Promise<void>;
  /** Makes this tab the one that writes; the one that does finishes its transaction before. */
  takeOver(): Promise<void>;
  /** Tells the others that what is kept has changed. */
  written(): void;
}

export interface TabsListener {
  /** This tab has come to write, or no longer does. */
  onRole(): void;
  /** Another tab has written. */
  onWritten(): void;
  /** Resolves when no transaction of this tab is under way. */
  idle(): Promise<void>;
}

/** There is no other tab, as in Node. */
export class OnlyTab implements Tabs {
  readonly writes = true;
  readonly takenOver = false;
  async join(): Promise<void> {}
  async takeOver(): Promise<void> {}
  written(): void {}
}
