import { afterAll, beforeAll } from 'vitest';
import type { Database } from '../../lib/store/Connector';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';

/** A database for the tests of a file that counts how often it was connected to: whatever reads files connects. */
export function countingDatabase() {
  let database: Database;
  const counted = {
    connections: 0,
    openDatabase: async (): Promise<Database> => ({
      ...database,
      connect: () => {
        counted.connections += 1;
        return database.connect();
      },
    }),
  };
  beforeAll(async () => {
    database = await openNodeDatabase();
  });
  afterAll(() => database.close());
  return counted;
}
