import { z } from 'zod';
import { type JournalEntry, journalEntrySchema } from '../../../records/decisions/Decision';
import type { InputFile } from '../../../records/importReport';

/** What is kept in this browser between visits, one value a name. */
export interface KeptValues {
  /** The user's own files as they were dropped. */
  readonly files: readonly InputFile[];
  /** Every decision about them. */
  readonly journal: readonly JournalEntry[];
  /** Which data was open last. */
  readonly source: 'demo' | 'own';
  /** Under which decisions are signed. */
  readonly initials: string;
}

export type KeptName = keyof KeptValues;

export const nothingKept: KeptValues = { files: [], journal: [], source: 'demo', initials: '' };
export const keptNames = Object.keys(nothingKept) as readonly KeptName[];

/** A value, or parts of one, that cannot be read: of another version of this page, or damaged. */
export interface Unreadable {
  readonly name: KeptName;
  /** How many of its parts cannot be read; null if none can. */
  readonly parts: number | null;
  readonly reason: string;
  readonly raw: unknown;
}

const fileSchema = z.object({ name: z.string(), bytes: z.instanceof(Uint8Array) });
const schemas = {
  source: z.enum(['demo', 'own']),
  initials: z.string(),
} as const;

/** Reads kept values; what cannot be read is left out and listed, and the rest of the same value is used. */
export function readKeptValues(raw: ReadonlyMap<string, unknown>): {
  readonly values: KeptValues;
  readonly unreadable: readonly Unreadable[];
} {
  const unreadable: Unreadable[] = [];
  const listed = <T>(name: KeptName, schema: z.ZodType<T>): readonly T[] => {
    const value = raw.get(name);
    if (value === undefined) return [];
    if (!Array.isArray(value)) {
      unreadable.push({ name, parts: null, reason: 'it is not a list', raw: value });
      return [];
    }
    const read = value.map((one) => schema.safeParse(one));
    const failed = read.filter(({ success }) => !success);
    const [first] = failed;
    if (first !== undefined)
      unreadable.push({ name, parts: failed.length, reason: reasonOf(first.error), raw: value });
    return read.flatMap(({ success, data }) => (success ? [data] : []));
  };
  const single = <Name extends 'source' | 'initials'>(name: Name): KeptValues[Name] => {
    const value = raw.get(name);
    if (value === undefined) return nothingKept[name];
    const read = schemas[name].safeParse(value);
    if (read.success) return read.data as KeptValues[Name];
    unreadable.push({ name, parts: null, reason: reasonOf(read.error), raw: value });
    return nothingKept[name];
  };
  const journal = listed('journal', journalEntrySchema);
  const values = {
    files: listed('files', fileSchema),
    // Lines are numbered from 1 without gaps wherever a journal is read.
    journal: journal.every(({ number }, index) => number === index + 1)
      ? journal
      : journal.map((entry, index) => ({ ...entry, number: index + 1 })),
    source: single('source'),
    initials: single('initials'),
  };
  return { values, unreadable };
}

function reasonOf(error: z.ZodError | undefined): string {
  const issue = error?.issues[0];
  return `${issue?.path.join('.') || 'its content'}: ${issue?.message ?? 'not as this page writes it'}`;
}
