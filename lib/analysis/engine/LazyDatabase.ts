import type { Connector, Database } from '../../store/Connector';

/** A database that is started when it is first needed, and anew after a start that failed. */
export class LazyDatabase {
  private started: Promise<Database> | null = null;

  constructor(private readonly start: () => Promise<Database>) {}

  /** A connection with an empty schema of its own. */
  async connect(): Promise<Connector> {
    this.started ??= this.start().catch((error: unknown) => {
      this.started = null;
      throw error;
    });
    return (await this.started).connect();
  }
}
