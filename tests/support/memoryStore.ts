import {
  type CountedWrite,
  generationName,
  generationOf,
  KeptElsewhere,
  type KeptStore,
} from '../../lib/analysis/engine/kept/KeptStore';

/** A store as a browser has one, in memory, that can be full, refuse, die within a write, and be shared by tabs. */
export class MemoryStore implements KeptStore {
  values = new Map<string, unknown>();
  /** Thrown by reads and writes while it is set. */
  fault: Error | null = null;
  /** Names of the values of every write that was kept, in order. */
  readonly writes: string[][] = [];
  /** Runs before a write takes place. */
  beforeWrite: () => Promise<void> = async () => {};

  async read(names: readonly string[]): Promise<ReadonlyMap<string, unknown>> {
    if (this.fault !== null) throw this.fault;
    return new Map(names.map((name) => [name, structuredClone(this.values.get(name))]));
  }

  async write(values: ReadonlyMap<string, unknown>, { generation, counts }: CountedWrite): Promise<void> {
    await this.beforeWrite();
    if (this.fault !== null) throw this.fault;
    if (generationOf(this.values.get(generationName)) !== generation) throw new KeptElsewhere();
    this.writes.push([...values.keys()]);
    const next = new Map([...this.values, ...structuredClone(values)]);
    if (counts) next.set(generationName, generation + 1);
    this.values = next;
  }
}
