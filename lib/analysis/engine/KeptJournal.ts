import type { Decision, JournalEntry } from '../../records/decisions/Decision';
import { withDecisions, withTakenBack } from '../../records/decisions/journal';
import { keep, kept } from './keptStore';

/** The journal of decisions and the initials it is signed with, kept in this browser and held in case it keeps nothing. */
export class KeptJournal {
  private written: readonly JournalEntry[] | null = null;
  private signedBy: string | null = null;

  /** @param now ISO date and time, UTC */
  constructor(private readonly now: () => string) {}

  async entries(): Promise<readonly JournalEntry[]> {
    this.written ??= await kept('journal');
    return this.written;
  }

  async initials(): Promise<string> {
    this.signedBy ??= await kept('initials');
    return this.signedBy;
  }

  async signAs(initials: string): Promise<void> {
    this.signedBy = initials;
    await keep('initials', initials);
  }

  /** The journal as it would be with these decisions; nothing is written. */
  async with(decisions: readonly Decision[]): Promise<readonly JournalEntry[]> {
    return withDecisions(await this.entries(), decisions, await this.signature());
  }

  async decide(decisions: readonly Decision[]): Promise<void> {
    await this.write(await this.with(decisions));
  }

  async takeBack(ids: readonly string[]): Promise<void> {
    await this.write(withTakenBack(await this.entries(), ids, await this.signature()));
  }

  async forget(): Promise<void> {
    await this.write([]);
  }

  private async write(journal: readonly JournalEntry[]): Promise<void> {
    this.written = journal;
    await keep('journal', journal);
  }

  private async signature() {
    return { at: this.now(), by: await this.initials() };
  }
}
