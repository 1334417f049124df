import type { KeptState, NotKept, SetAside } from './KeptState';
import {
  filesMarkName,
  generationName,
  generationOf,
  KeptElsewhere,
  type KeptStore,
  lastAnswerName,
} from './KeptStore';
import { type KeptName, type KeptValues, keptNames, nothingKept, readKeptValues } from './keptValues';
import type { Tabs } from './Tabs';

/** Whether the browser keeps an act; a tab that looks on may not change what is kept. */
export type KeptOutcome = 'kept' | 'not kept' | 'looks on';

/** Names of values of which other tabs hold an older state once one of them is written. */
const shared: ReadonlySet<KeptName> = new Set<KeptName>(['files', 'journal']);

/**
 * Holds what a person brought in and decided, and keeps it in this browser: what belongs to one act in one transaction.
 *
 * What the browser refuses to keep is held until the page is closed, said, and tried again with the next act.
 */
export class Keeper {
  private values: KeptValues = nothingKept;
  private readonly unsaved = new Set<KeptName>();
  private generation = 0;
  private filesMark: unknown;
  private joining: Promise<void> | null = null;
  private loading: Promise<void> | null = null;
  private writing: Promise<boolean> = Promise.resolve(true);
  private saving: KeptState['saving'] = 'saved';
  private notKept: NotKept | null = null;
  private changedElsewhere = false;
  private aside: readonly SetAside[] = [];
  /** Values that could not be read, to be kept under other names before anything is written over them. */
  private toSetAside: ReadonlyMap<string, unknown> = new Map();
  private number = 1;
  private waiting: (() => void)[] = [];

  /** @param now ISO date and time, UTC, by which values set aside are named */
  constructor(
    private readonly store: KeptStore,
    private readonly tabs: Tabs,
    private readonly now: () => string,
  ) {}

  async get<Name extends KeptName>(name: Name): Promise<KeptValues[Name]> {
    await this.load();
    return this.values[name];
  }

  /** Whether acts of this tab may change what is kept. */
  async mayWrite(): Promise<boolean> {
    await this.load();
    return this.tabs.writes && !this.changedElsewhere;
  }

  /** Holds values, see `hold`, and waits until they are kept. */
  async keep(values: Partial<KeptValues>): Promise<KeptOutcome> {
    const held = await this.hold(values);
    if (held === 'looks on') return held;
    return (await held.saving) ? 'kept' : 'not kept';
  }

  /**
   * Holds values and begins to keep them, with whatever was not kept before, in one transaction; `saving` resolves to whether
   * they are kept. Nothing is changed where this tab may not write.
   */
  async hold(values: Partial<KeptValues>): Promise<{ readonly saving: Promise<boolean> } | 'looks on'> {
    await this.load();
    const changed = keptNames.filter((name) => name in values && !isSame(values[name], this.values[name]));
    if (changed.length > 0 && !(await this.mayWrite())) return 'looks on';
    for (const name of changed) this.unsaved.add(name);
    this.values = { ...this.values, ...Object.fromEntries(changed.map((name) => [name, values[name]])) };
    this.writing = this.writing.then(() => this.write());
    return { saving: this.writing };
  }

  /** Resolves when nothing is being written: long work of this thread before that would hold it up. */
  async written(): Promise<void> {
    await this.writing;
  }

  /**
   * Keeps the answer made from the files that are kept, until they change; not where the browser refuses, or this tab may not
   * write.
   *
   * @param answerOf makes it from the mark of these files
   */
  async keepAnswer(answerOf: (filesMark: unknown) => unknown): Promise<void> {
    this.writing = this.writing.then(async (saved) => {
      if (!saved || !(await this.mayWrite())) return saved;
      const { generation } = this;
      const values = new Map([[lastAnswerName, answerOf(this.filesMark)]]);
      // An answer that is not kept is made anew.
      await this.store.write(values, { generation, counts: false }).catch(() => {});
      return saved;
    });
    await this.writing;
  }

  /** Takes what is kept by now in place of what this tab holds, if another tab has written; true if it did. */
  async refresh(): Promise<boolean> {
    await this.load();
    await this.lookForChange();
    if (!this.changedElsewhere) return false;
    this.unsaved.clear();
    this.changedElsewhere = false;
    this.saving = 'saved';
    this.notKept = null;
    this.loading = null;
    await this.load();
    return true;
  }

  /** Makes this tab the one that writes. */
  async takeOver(): Promise<void> {
    await this.load();
    await this.tabs.takeOver();
    await this.lookForChange();
  }

  /** How it stands, as soon as it is another state than the one of that number. */
  async state(after: number): Promise<KeptState> {
    await this.load();
    if (after === this.number) await new Promise<void>((resolve) => this.waiting.push(resolve));
    const { number, saving, notKept, changedElsewhere, aside, tabs, values } = this;
    return {
      number,
      saving,
      notKept,
      files: values.files.length,
      entries: values.journal.length,
      writes: tabs.writes,
      takenOver: tabs.takenOver,
      changedElsewhere,
      aside,
    };
  }

  private changed(): void {
    this.number += 1;
    for (const tell of this.waiting.splice(0)) tell();
  }

  private async write(): Promise<boolean> {
    const names = [...this.unsaved];
    if (names.length === 0) return this.saving !== 'not saved';
    this.unsaved.clear();
    this.saving = 'saving';
    this.changed();
    try {
      const values = new Map<string, unknown>(names.map((name) => [name, this.values[name]]));
      const counts = names.some((name) => shared.has(name));
      const filesMark = names.includes('files') ? this.generation + 1 : this.filesMark;
      if (filesMark !== this.filesMark) values.set(filesMarkName, filesMark).set(lastAnswerName, null);
      await this.store.write(new Map([...this.toSetAside, ...values]), {
        generation: this.generation,
        counts,
      });
      if (counts) this.generation += 1;
      this.filesMark = filesMark;
      this.toSetAside = new Map();
      this.saving = 'saved';
      this.notKept = null;
      if (counts) this.tabs.written();
    } catch (error) {
      for (const name of names) this.unsaved.add(name);
      this.saving = 'not saved';
      this.notKept = notKeptBy(error);
      if (error instanceof KeptElsewhere) this.changedElsewhere = true;
    }
    this.changed();
    return this.saving === 'saved';
  }

  private load(): Promise<void> {
    this.joining ??= this.tabs.join({
      onRole: () => void this.lookForChange().then(() => this.changed()),
      onWritten: () => void this.lookForChange(),
      idle: () => this.writing.then(() => {}),
    });
    this.loading ??= this.joining.then(() => this.read());
    return this.loading;
  }

  private async read(): Promise<void> {
    try {
      const raw = await this.store.read([...keptNames, generationName, filesMarkName]);
      this.filesMark = raw.get(filesMarkName);
      this.generation = generationOf(raw.get(generationName));
      const { values, unreadable } = readKeptValues(raw);
      this.values = values;
      this.aside = unreadable.map(({ name, parts, reason }) => ({ name, parts, reason }));
      const at = this.now();
      this.toSetAside = new Map(unreadable.map(({ name, raw: value }) => [`set aside ${name} ${at}`, value]));
    } catch (error) {
      this.saving = 'not saved';
      this.notKept = notKeptBy(error);
    }
    this.changed();
  }

  private async lookForChange(): Promise<void> {
    // A write of this tab that is under way is no one else's.
    await this.writing;
    try {
      const raw = await this.store.read([generationName]);
      const isChanged = generationOf(raw.get(generationName)) !== this.generation;
      if (isChanged === this.changedElsewhere) return;
      this.changedElsewhere = isChanged;
      this.changed();
    } catch {
      // A browser that keeps nothing has nothing that could have changed; it was said when it was first read.
    }
  }
}

/** Whether two values are the same, lists by their elements: those of an open file are never copied. */
function isSame(one: unknown, other: unknown): boolean {
  if (!Array.isArray(one) || !Array.isArray(other)) return one === other;
  return one.length === other.length && one.every((element, index) => element === other[index]);
}

function notKeptBy(error: unknown): NotKept {
  const detail = error instanceof Error ? error.message : String(error);
  if (error instanceof KeptElsewhere) return { cause: 'elsewhere', detail };
  const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
  return { cause: isFull ? 'full' : 'refused', detail };
}
