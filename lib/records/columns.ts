import { z } from 'zod';

/** How the text of a cell is read. */
export type ColumnKind = 'text' | 'number' | 'date' | 'choice' | 'codes';

/** What the schema of a column says about it: the single source for checks, screens and documents. */
export interface Column {
  readonly name: string;
  readonly kind: ColumnKind;
  /** An empty or unreadable cell holds the whole row. */
  readonly required: boolean;
  /** A cell that cannot be read holds the whole row, though an empty one does not. */
  readonly holdsRow: boolean;
  readonly description: string;
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  readonly choices?: readonly string[];
}

/** A whole cell that is read as a number, as a regular expression. */
export const numberPattern = '[+-]?([0-9]+[.]?[0-9]*|[.][0-9]+)([eE][+-]?[0-9]{1,3})?';
/** A whole cell that is read as a date. */
export const datePattern = '[0-9]{4}-[0-9]{2}-[0-9]{2}';
export const firstYear = 1950;
export const lastYear = 2100;

interface ColumnOptions {
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  readonly optional?: boolean;
  readonly holdsRow?: boolean;
}

function described<T extends z.ZodType>(
  schema: T,
  kind: ColumnKind,
  description: string,
  options: ColumnOptions,
  choices?: readonly string[],
) {
  const optional = options.optional ?? false;
  const meta = {
    kind,
    description,
    required: !optional,
    holdsRow: !optional || (options.holdsRow ?? false),
    ...(options.unit === undefined ? {} : { unit: options.unit }),
    ...(options.min === undefined ? {} : { min: options.min }),
    ...(options.max === undefined ? {} : { max: options.max }),
    ...(choices === undefined ? {} : { choices }),
  };
  return (optional ? schema.nullable() : schema).meta(meta);
}

/** A cell of free text. */
export function text(description: string, options: ColumnOptions = {}) {
  return described(z.string().min(1), 'text', description, options);
}

/** A cell with one number, decimal point, within [min, max]. */
export function number(description: string, options: ColumnOptions = {}) {
  let schema = z.number();
  if (options.min !== undefined) schema = schema.min(options.min);
  if (options.max !== undefined) schema = schema.max(options.max);
  return described(schema, 'number', description, options);
}

/** A cell with an ISO date, YYYY-MM-DD. */
export function date(description: string, options: ColumnOptions = {}) {
  return described(z.iso.date(), 'date', description, options);
}

/** A cell with one of the given words. */
export function choice(
  description: string,
  choices: readonly [string, ...string[]],
  options: ColumnOptions = {},
) {
  return described(z.enum(choices), 'choice', description, options, choices);
}

/** A cell with codes parted by semicolons. */
export function codes(description: string, options: ColumnOptions = {}) {
  return described(z.string().min(1), 'codes', description, options);
}

/** Columns of an object schema, in order, as its metadata states them. */
export function columnsOf(schema: z.ZodObject): readonly Column[] {
  return Object.entries(schema.shape).map(([name, field]) => ({
    name,
    ...((field as z.ZodType).meta() as Omit<Column, 'name'>),
  }));
}
