import { type Connector, StoreError } from './Connector';

/** What the columns of an answer hold: numbers, or texts without gaps. */
export type ColumnKinds = Readonly<Record<string, 'number' | 'text'>>;

/** Columns by name. */
export type Columns<K extends ColumnKinds> = {
  readonly [name in keyof K]: K[name] extends 'number' ? Float64Array : readonly string[];
};

/**
 * Runs a question and returns its columns, for answers of more rows than objects should be made of; numbers are NaN where
 * NULL. A column that is not there, of another kind, or a text that is NULL is an error that carries the SQL.
 */
export async function queryColumns<const K extends ColumnKinds>(
  connector: Connector,
  sql: string,
  kinds: K,
  parameters: readonly (string | number | null)[] = [],
): Promise<Columns<K>> {
  const columns = await connector.columns(sql, parameters);
  const checked = Object.entries(kinds).map(([name, kind]) => {
    const column = columns.get(name);
    const isRight =
      kind === 'number' ? column instanceof Float64Array : Array.isArray(column) && !column.includes(null);
    if (!isRight) throw new StoreError(new Error(`column ${name} is not of ${kind} throughout`), sql);
    return [name, column];
  });
  return Object.fromEntries(checked) as Columns<K>;
}
