import { parseArgs } from 'node:util';
import { importFiles } from '../../../store/importFiles';
import { openNodeDatabase } from '../../../store/nodeDatabase';
import { readDataFile } from '../../partitions/readDataFile';
import { readDataFolder } from '../../partitions/readDataFolder';
import { runMain, UnusableArguments } from '../../runMain';
import { passwordVariable, readWarehouseSettings, type WarehouseSettings } from '../warehouseSettings';
import { clickHouseLoader, type ShardAddress } from './clickHouseLoader';
import { postgresLoader } from './postgresLoader';
import { loadWarehouse, type WarehouseLoader } from './WarehouseLoader';

const usage =
  'Usage: tsx lib/batch/warehouse/load/main.ts --data DIR --warehouse FILE.json [--shards HOST:PORT,HOST:PORT]';

function shardsOf(text: string | undefined): readonly ShardAddress[] {
  if (text === undefined)
    throw new UnusableArguments('--shards is missing: name the HTTP interface of every shard, HOST:PORT,...');
  return text.split(',').map((address) => {
    const [, host, port] = /^(.+):(\d+)$/.exec(address) ?? [];
    if (host === undefined) throw new UnusableArguments(`--shards requires HOST:PORT, got '${address}'`);
    return { host, port: Number(port) };
  });
}

function loaderOf(
  settings: WarehouseSettings,
  shards: string | undefined,
): WarehouseLoader | Promise<WarehouseLoader> {
  const password = process.env[passwordVariable];
  return settings.kind === 'postgresql'
    ? postgresLoader(settings, password)
    : clickHouseLoader(settings, shardsOf(shards), password);
}

/** Loads the used rows of a folder of canonical files into an empty warehouse. Returns the exit status. */
async function main(words: readonly string[]): Promise<number> {
  const options = {
    data: { type: 'string' },
    warehouse: { type: 'string' },
    shards: { type: 'string' },
  } as const;
  const { data, warehouse, shards } = parseArgs({ args: [...words], options }).values;
  if (data === undefined || warehouse === undefined)
    throw new UnusableArguments('--data and --warehouse are needed');
  const loader = await loaderOf(await readWarehouseSettings(warehouse), shards);
  const database = await openNodeDatabase();
  try {
    const connector = await database.connect();
    const { shared, parts } = await readDataFolder(data);
    const files = [...shared, ...parts.flatMap((part) => part.files)];
    await importFiles(connector, await Promise.all(files.map(readDataFile)), async () => {});
    const counts = await loadWarehouse(connector, loader);
    const sentence = [...counts].map(([table, rows]) => `${rows} ${table}`).join(', ');
    process.stdout.write(`Loaded ${sentence}\n`);
    return 0;
  } finally {
    await database.close();
    await loader.close();
  }
}

await runMain(main, usage);
