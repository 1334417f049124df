import type { Decision, JournalEntry } from '../../records/decisions/Decision';
import { type Signature, withDecisions, withTakenBack } from '../../records/decisions/journal';
import { withRedone, withUndone } from '../../records/decisions/steps';
import type { Keeper } from './kept/Keeper';
import { LooksOn } from './kept/LooksOn';

/** Makes a journal of the one that is kept. */
type Change = (journal: readonly JournalEntry[], signature: Signature) => readonly JournalEntry[];

/** The journal of decisions and the initials it is signed with. */
export class KeptJournal {
  /** The change under way: the next one starts from what it has written. */
  private changing: Promise<void> = Promise.resolve();

  /** @param now ISO date and time, UTC */
  constructor(
    private readonly keeper: Keeper,
    private readonly now: () => string,
  ) {}

  async entries(): Promise<readonly JournalEntry[]> {
    return this.keeper.get('journal');
  }

  async initials(): Promise<string> {
    return this.keeper.get('initials');
  }

  async signAs(initials: string): Promise<void> {
    await this.keeper.keep({ initials });
  }

  /** The journal as it would be with these decisions; nothing is written. */
  async with(decisions: readonly Decision[]): Promise<readonly JournalEntry[]> {
    return withDecisions(await this.entries(), decisions, await this.signature());
  }

  async decide(decisions: readonly Decision[]): Promise<void> {
    await this.change((journal, signature) => withDecisions(journal, decisions, signature));
  }

  async takeBack(ids: readonly string[]): Promise<void> {
    await this.change((journal, signature) => withTakenBack(journal, ids, signature));
  }

  /** Undoes a step, if it is the next to be undone. */
  async undo(step: number): Promise<void> {
    await this.change((journal, signature) => withUndone(journal, step, signature));
  }

  /** Does an undone step again, if it is the next to be done again. */
  async redo(step: number): Promise<void> {
    await this.change((journal, signature) => withRedone(journal, step, signature));
  }

  /** Who writes to the journal now. */
  async signature(): Promise<Signature> {
    return { at: this.now(), by: await this.initials() };
  }

  /** Resolves once the change is kept, or held because the browser keeps nothing. */
  private change(make: Change): Promise<void> {
    const changed = this.changing.then(async () => {
      const journal = make(await this.entries(), await this.signature());
      if ((await this.keeper.keep({ journal })) === 'looks on') throw new LooksOn();
    });
    this.changing = changed.catch(() => {});
    return changed;
  }
}
