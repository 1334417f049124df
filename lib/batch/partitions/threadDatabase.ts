import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import type { Database } from '../../store/Connector';
import { openNodeDatabase } from '../../store/nodeDatabase';
import type { PartTask } from './PartTask';

let opened: Promise<Database> | null = null;

/**
 * The database of this thread, in which its parts follow each other, each in a schema of its own: the memory of one is taken by the
 * next, where a database that is closed gives all of it back to the system.
 *
 * It is open as long as the thread lives; what it writes lies beside the kept parts and goes with them.
 */
export function threadDatabase({ partials, memory_MB }: PartTask): Promise<Database> {
  // One thread a database: sums of several threads depend on which is done first.
  opened ??= openNodeDatabase({ memory_MB, threads: 1, folder: join(partials, `${randomUUID()}.part`) });
  return opened;
}
