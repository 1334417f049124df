import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { runMain, UnusableArguments } from '../../runMain';
import { clickHouseProgram, startClickHouse } from './clickHouseServers';
import { postgresPrograms, startPostgres } from './postgresServer';

const usage = 'Usage: tsx lib/batch/warehouse/servers/main.ts --folder DIR [--shards N]';

function told(): Promise<void> {
  return new Promise((tell) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => tell());
  });
}

/**
 * Starts the warehouses whose packages are installed, each empty and on loopback, writes how they are reached as FILE.json, and
 * ends them when told to. Returns the exit status.
 */
async function main(words: readonly string[]): Promise<number> {
  const options = { folder: { type: 'string' }, shards: { type: 'string' } } as const;
  const { folder, shards = '2' } = parseArgs({ args: [...words], options }).values;
  if (folder === undefined) throw new UnusableArguments('--folder is missing: name an empty folder');
  if (!/^[1-9]\d?$/.test(shards))
    throw new UnusableArguments(`--shards requires a number from 1 to 99, got '${shards}'`);
  const [postgres, clickHouse] = [postgresPrograms(), clickHouseProgram()];
  const stops: (() => Promise<void>)[] = [];
  const started = (name: string, settings: object, more: string) => {
    const path = join(folder, `${name}.json`);
    writeFileSync(path, `${JSON.stringify(settings, null, 2)}\n`);
    process.stdout.write(`${path}${more}\n`);
  };
  try {
    if (postgres === null) process.stdout.write('PostgreSQL is not installed: not started\n');
    else {
      const server = await startPostgres(resolve(folder, 'postgresql'), postgres);
      stops.push(server.stop);
      started('postgresql', server.settings, '');
    }
    if (clickHouse === null) process.stdout.write('ClickHouse is not installed: not started\n');
    else {
      const servers = await startClickHouse(resolve(folder, 'clickhouse'), clickHouse, Number(shards));
      stops.push(servers.stop);
      const addresses = servers.shards.map(({ host, port }) => `${host}:${port}`).join(',');
      started('clickhouse', servers.settings, ` (to load it: --shards ${addresses})`);
    }
    if (stops.length === 0) return 1;
    process.stdout.write('Running until Ctrl-C\n');
    await told();
    return 0;
  } finally {
    await Promise.all(stops.map((stop) => stop()));
  }
}

await runMain(main, usage);
