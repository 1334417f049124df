import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { UnusableArguments } from '../runMain';

/** The password of a warehouse's user is taken from this environment variable and from nowhere else. */
export const passwordVariable = 'ENDFLOAT_WAREHOUSE_PASSWORD';

const place = {
  host: z.string().min(1),
  port: z.number().int().min(1).max(65_535),
  database: z.string().regex(/^[A-Za-z_][A-Za-z0-9_]*$/, 'letters, digits and _ only'),
  user: z.string().min(1),
};
const postgres = z.strictObject({ kind: z.literal('postgresql'), ...place });
const clickHouse = z.strictObject({
  kind: z.literal('clickhouse'),
  ...place,
  /** Name of the cluster whose shards hold the units; port is that of the HTTP interface of one of its servers. */
  cluster: z.string().regex(/^[A-Za-z_][A-Za-z0-9_]*$/, 'letters, digits and _ only'),
});
const settings = z.discriminatedUnion('kind', [postgres, clickHouse]);

export type PostgresSettings = z.output<typeof postgres>;
export type ClickHouseSettings = z.output<typeof clickHouse>;
export type WarehouseSettings = z.output<typeof settings>;

/**
 * Reads where a warehouse is from a JSON file: kind, host, port, database, user and, for clickhouse, cluster.
 *
 * @throws UnusableArguments if the file cannot be read or says something else, such as a password
 */
export async function readWarehouseSettings(path: string): Promise<WarehouseSettings> {
  let value: unknown;
  try {
    value = JSON.parse(await readFile(path, 'utf8'));
  } catch (error) {
    throw new UnusableArguments(
      `--warehouse: the file '${path}' cannot be read as JSON (${error instanceof Error ? error.message : error})`,
    );
  }
  if (typeof value === 'object' && value !== null && 'password' in value)
    throw new UnusableArguments(
      `--warehouse: the file '${path}' holds a password: take it out and give it in the environment variable ${passwordVariable}`,
    );
  const checked = settings.safeParse(value);
  if (!checked.success)
    throw new UnusableArguments(`--warehouse: the file '${path}': ${z.prettifyError(checked.error)}`);
  return checked.data;
}
