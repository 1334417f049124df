import { promisifyRequest } from 'idb-keyval';
import { generationName, generationOf, KeptElsewhere, type KeptStore } from './KeptStore';
import { asHeld, asStored } from './largeFiles';

const databaseName = 'endfloat';
const storeName = 'own-files';

/** The store of this browser: IndexedDB, one value a name, every write one transaction that is on the disk when it ends. */
export function browserStore(): KeptStore {
  let opening: Promise<IDBDatabase> | null = null;
  const database = (): Promise<IDBDatabase> => {
    opening ??= opened(() => {
      opening = null;
    }).catch((error: unknown) => {
      opening = null;
      throw error;
    });
    return opening;
  };
  return {
    async read(names) {
      const store = (await database()).transaction(storeName, 'readonly').objectStore(storeName);
      const values = await Promise.all(names.map((name) => promisifyRequest<unknown>(store.get(name))));
      const whole = await Promise.all(values.map(asHeld));
      return new Map(names.map((name, index) => [name, whole[index]]));
    },
    async write(values, { generation, counts }) {
      // 'strict': an act that was acknowledged outlives a loss of power, too.
      const transaction = (await database()).transaction(storeName, 'readwrite', { durability: 'strict' });
      const done = promisifyRequest(transaction);
      // Where the check below fails, that is the reason and not the abort it brings about.
      done.catch(() => {});
      const store = transaction.objectStore(storeName);
      const kept = await promisifyRequest<unknown>(store.get(generationName));
      try {
        if (generationOf(kept) !== generation) throw new KeptElsewhere();
        for (const [name, value] of values) store.put(asStored(value), name);
        if (counts) store.put(generation + 1, generationName);
      } catch (error) {
        transaction.abort();
        throw error;
      }
      await done;
    },
  };
}

async function opened(onClosed: () => void): Promise<IDBDatabase> {
  const request = indexedDB.open(databaseName);
  request.onupgradeneeded = () => request.result.createObjectStore(storeName);
  const database = await promisifyRequest(request);
  database.onclose = onClosed;
  database.onversionchange = () => {
    database.close();
    onClosed();
  };
  return database;
}
