/** A place in this browser that keeps values by name between visits. */
export interface KeptStore {
  /** The values kept under the names, all as of one moment. */
  read(names: readonly string[]): Promise<ReadonlyMap<string, unknown>>;
  /**
   * Keeps all of the values or none of them; resolves once they are safe.
   *
   * @throws KeptElsewhere if the store was written since by someone else; nothing is changed
   */
  write(values: ReadonlyMap<string, unknown>, write: CountedWrite): Promise<void>;
}

/** A write among the others that count. */
export interface CountedWrite {
  /** Counted writes before this one, as far as the writer knows. */
  readonly generation: number;
  /** Whether this one counts: whoever holds what was kept before holds an older state then. */
  readonly counts: boolean;
}

/** Name under which a store counts how often it was written. */
export const generationName = 'generation';

/** Name under which a store marks which files it keeps: another value whenever they were written. */
export const filesMarkName = 'files mark';

/** Name under which a store keeps the answer that was made from its files last. */
export const lastAnswerName = 'last answer';

/** Another tab has written what is kept in the meantime. */
export class KeptElsewhere extends Error {
  constructor() {
    super('another tab has changed what is kept in this browser');
    this.name = 'KeptElsewhere';
  }
}

/** The count of writes as it is kept: 0 where there is none yet. */
export function generationOf(value: unknown): number {
  return typeof value === 'number' ? value : 0;
}
