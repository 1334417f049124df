import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ClickHouseHttp } from '../clickhouse/ClickHouseHttp';
import type { ShardAddress } from '../load/clickHouseLoader';
import type { ClickHouseSettings } from '../warehouseSettings';
import { clickHouseConfig, clickHouseUsers } from './clickHouseConfig';
import { freePorts } from './freePorts';
import { ServerProcess } from './ServerProcess';

const programs = ['/usr/bin/clickhouse-server', '/usr/sbin/clickhouse-server'];
const cluster = 'endfloat';

/** Private ClickHouse servers, each a shard of one cluster, with empty databases. */
export interface ClickHouseServers {
  /** How the first of them is asked. */
  readonly settings: ClickHouseSettings;
  readonly shards: readonly ShardAddress[];
  /** Lets one shard hang. */
  pauseShard(place: number): void;
  /** Ends one shard at once, as if its machine had failed. */
  killShard(place: number): Promise<void>;
  stop(): Promise<void>;
}

/** The installed server, or null if there is none. */
export function clickHouseProgram(): string | null {
  return programs.find((path) => existsSync(path)) ?? null;
}

/** Starts servers in a folder, on loopback only, without a password: for a first trial and for tests. */
export async function startClickHouse(
  folder: string,
  program: string,
  shardCount: number,
): Promise<ClickHouseServers> {
  const ports = await freePorts(2 * shardCount);
  const places = Array.from({ length: shardCount }, (_, place) => ({
    folder: join(folder, `shard-${place + 1}`),
    httpPort: ports[2 * place] ?? 0,
    tcpPort: ports[2 * place + 1] ?? 0,
  }));
  const settingsOf = (port: number): ClickHouseSettings => ({
    kind: 'clickhouse',
    host: '127.0.0.1',
    port,
    database: 'default',
    user: 'default',
    cluster,
  });
  const servers = await Promise.all(
    places.map((place) => {
      mkdirSync(place.folder, { recursive: true });
      const config = join(place.folder, 'config.xml');
      writeFileSync(config, clickHouseConfig(place, cluster, places));
      writeFileSync(join(place.folder, 'users.xml'), clickHouseUsers);
      const http = new ClickHouseHttp(settingsOf(place.httpPort), undefined);
      return ServerProcess.start({
        name: 'ClickHouse',
        path: program,
        arguments: [`--config-file=${config}`],
        folder: place.folder,
        answers: () => http.run('SELECT 1'),
      });
    }),
  );
  return {
    settings: settingsOf(places[0]?.httpPort ?? 0),
    shards: places.map(({ httpPort }) => ({ host: '127.0.0.1', port: httpPort })),
    pauseShard: (place) => servers[place]?.pause(),
    killShard: async (place) => servers[place]?.stop('SIGKILL'),
    async stop() {
      await Promise.all(servers.map((server) => server.stop('SIGKILL')));
    },
  };
}
