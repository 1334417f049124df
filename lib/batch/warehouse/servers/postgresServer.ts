import { execFileSync } from 'node:child_process';
import { chownSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Client } from 'pg';
import type { PostgresSettings } from '../warehouseSettings';
import { freePorts } from './freePorts';
import { ServerProcess } from './ServerProcess';

const packages = '/usr/lib/postgresql';
const user = 'endfloat';

/** A private PostgreSQL with an empty database. */
export interface PostgresServer {
  readonly settings: PostgresSettings;
  stop(): Promise<void>;
  /** Ends it at once, whatever it is doing. */
  kill(): Promise<void>;
}

/** Folder with the programs of the newest installed PostgreSQL, or null if there is none. */
export function postgresPrograms(): string | null {
  try {
    const [newest] = readdirSync(packages).sort((a, b) => Number(b) - Number(a));
    return newest === undefined ? null : join(packages, newest, 'bin');
  } catch {
    return null;
  }
}

/** PostgreSQL refuses to run as root, so that it runs as its package's own user then. */
function ownerOfServer(): { readonly uid: number; readonly gid: number } | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const id = (option: string) => Number(execFileSync('id', [option, 'postgres'], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

/**
 * Starts a PostgreSQL of its own in a folder, on loopback only, without a password: for a first trial and for tests.
 *
 * @param programs folder with initdb and postgres
 */
export async function startPostgres(folder: string, programs: string): Promise<PostgresServer> {
  const owner = ownerOfServer();
  mkdirSync(folder, { recursive: true });
  if (owner !== undefined) chownSync(folder, owner.uid, owner.gid);
  const data = join(folder, 'data');
  execFileSync(
    join(programs, 'initdb'),
    ['-D', data, '-U', user, '--auth=trust', '--encoding=UTF8', '--no-locale', '--no-sync'],
    { cwd: folder, stdio: 'pipe', ...owner },
  );
  const [port = 0] = await freePorts(1);
  const settings = { kind: 'postgresql', host: '127.0.0.1', port, database: 'postgres', user } as const;
  const server = await ServerProcess.start({
    name: 'PostgreSQL',
    path: join(programs, 'postgres'),
    arguments: ['-D', data, '-h', '127.0.0.1', '-p', String(port), '-k', folder, '-F'],
    folder,
    owner,
    answers: async () => {
      const client = new Client({ ...settings });
      await client.connect();
      await client.end();
    },
  });
  return { settings, stop: () => server.stop('SIGINT'), kill: () => server.stop('SIGQUIT') };
}
