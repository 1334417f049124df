import type { Decision } from '../../../records/decisions/Decision';
import { decisionsForReading } from '../../../records/decisions/tableEdits';
import type { FleetResult } from '../../types';
import { type PackedFleet, packFleet } from '../PackedFleet';
import type { Keeper } from './Keeper';
import { filesMarkName, type KeptStore, lastAnswerName } from './KeptStore';
import { readKeptValues } from './keptValues';

/** The answer made from the own files when they were opened last, and what it was made from. */
interface KeptAnswer {
  /** Version of the site that made it. */
  readonly version: string;
  readonly filesMark: unknown;
  readonly decisions: string;
  readonly fleet: PackedFleet;
}

/** The answer of last time: shown while it is computed again, and only if it would come out the same. */
export class LastAnswer {
  /** @param version of the site; null where versions are not told apart, and nothing is kept then */
  constructor(
    private readonly store: KeptStore,
    private readonly keeper: Keeper,
    private readonly version: string | null,
  ) {}

  /**
   * Which data were open last, and, of own files, the answer that was kept; null if these, the decisions or the site have
   * changed since.
   */
  async read(): Promise<{ readonly source: FleetResult['source']; readonly fleet: PackedFleet | null }> {
    const { source } = readKeptValues(await this.store.read(['source'])).values;
    // Of a large fleet the answer is large: it is read only where it may be shown.
    if (source !== 'own') return { source, fleet: null };
    const raw = await this.store.read([lastAnswerName, filesMarkName, 'journal']);
    const kept = raw.get(lastAnswerName) as KeptAnswer | null | undefined;
    const { journal } = readKeptValues(raw).values;
    const stands =
      kept != null &&
      kept.version === this.version &&
      kept.filesMark === raw.get(filesMarkName) &&
      kept.decisions === decisionsText(decisionsForReading(journal));
    return { source, fleet: stands ? kept.fleet : null };
  }

  /** Keeps the answer made from the files that are kept and these decisions. */
  async keep(fleet: FleetResult, decisions: readonly Decision[]): Promise<void> {
    const { version } = this;
    if (version === null) return;
    await this.keeper.keepAnswer(
      (filesMark): KeptAnswer => ({
        version,
        filesMark,
        decisions: decisionsText(decisions),
        fleet: packFleet(fleet),
      }),
    );
  }
}

/** The decisions that readings are taken in with, as text that compares: remarks change no reading. */
function decisionsText(decisions: readonly Decision[]): string {
  return JSON.stringify(decisions.filter(({ kind }) => kind !== 'acknowledgement'));
}
