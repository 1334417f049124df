import { z } from 'zod';
import { type Connector, StoreError } from './Connector';

/** Runs a question and checks the columns of its answer; an answer of another shape is an error that carries the SQL. */
export async function queryRows<T extends z.ZodType>(
  connector: Connector,
  sql: string,
  row: T,
  parameters: readonly (string | number | null)[] = [],
): Promise<readonly z.output<T>[]> {
  const rows = await connector.query(sql, parameters);
  const checked = z.array(row).safeParse(rows);
  if (!checked.success)
    throw new StoreError(new Error(`rows of another shape: ${z.prettifyError(checked.error)}`), sql);
  return checked.data;
}
