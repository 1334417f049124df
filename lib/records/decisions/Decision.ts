import { z } from 'zod';
import { clockPositions } from '../characteristics';
import { editedTables } from './editedTables';

/** Answer to a question; its id is the question's. */
const answerDecision = z.object({
  kind: z.literal('answer'),
  id: z.string(),
  file: z.string(),
  column: z.string(),
  question: z.string(),
  answer: z.string(),
  /** Shape of the sheet, if the answer holds for the form of all files of that shape. */
  shape: z.string().optional(),
});

/** What a person says a column holds; holds for every file of the same shape. */
const meaningDecision = z.object({
  kind: z.literal('meaning'),
  id: z.string(),
  /** Shape of the sheet: see sheetShape. */
  shape: z.string(),
  /** File on which it was decided. */
  file: z.string(),
  column: z.string(),
  /** Position in the sheet, from 0. */
  index: z.int().nonnegative(),
  role: z.string(),
  characteristic: z.string().nullable(),
  stage: z.enum(['found', 'left']).nullable(),
  clock: z.enum(clockPositions).nullable(),
  uom: z.string().nullable(),
});

/** What a person rules about a held row or cell. */
const rulingDecision = z.object({
  kind: z.literal('ruling'),
  id: z.string(),
  file: z.string(),
  line: z.int().positive(),
  /** Empty for the whole row. */
  column: z.string(),
  /** As it stands in the file. */
  raw: z.string(),
  ruling: z.enum(['edit', 'release', 'leave out']),
  /** What is read in place of the raw text, of 'edit'. */
  text: z.string().nullable(),
  reason: z.string(),
  /** Initials in free text; may be empty. */
  by: z.string(),
});

/** What a person remarks on the signals of one unit's series up to a day: it stands aside until there are later ones. */
const acknowledgementDecision = z.object({
  kind: z.literal('acknowledgement'),
  id: z.string(),
  /** Data that the signals were found in: of the demo fleet or the own files. */
  source: z.enum(['demo', 'own']),
  unit: z.string(),
  series: z.string(),
  /** Date of the latest signal that is acknowledged. */
  upTo: z.string(),
  remark: z.string(),
});

const rowTexts = z.record(z.string(), z.string()).nullable();

/** What a person says a row of a table holds, in place of what files say of it. */
const tableDecision = z.object({
  kind: z.literal('table'),
  id: z.string(),
  table: z.enum(editedTables),
  /** Texts of the cells that name the row, in order of the table's key; empty where a cell is. */
  key: z.array(z.string()),
  /** Text of every cell that is not empty, by column; null for a row that is removed. */
  cells: rowTexts,
  /** The same as the files had it when it was first edited; null for a row that none had. */
  was: rowTexts,
  /** Number of the journal's entry that first said so; given when files are read, not kept. */
  line: z.int().positive().optional(),
});

/** One thing that a person decided about the imported files; the id names what it is about, and the latest holds. */
export const decisionSchema = z.discriminatedUnion('kind', [
  answerDecision,
  meaningDecision,
  rulingDecision,
  acknowledgementDecision,
  tableDecision,
]);

export type Decision = z.output<typeof decisionSchema>;
export type AnswerDecision = z.output<typeof answerDecision>;
export type MeaningDecision = z.output<typeof meaningDecision>;
export type RulingDecision = z.output<typeof rulingDecision>;
export type AcknowledgementDecision = z.output<typeof acknowledgementDecision>;
export type TableDecision = z.output<typeof tableDecision>;

/** One line of the journal: who decided what when, and what held before. */
export const journalEntrySchema = z.object({
  number: z.int().positive(),
  /** ISO date and time, UTC. */
  at: z.string(),
  /** Initials in free text; may be empty. */
  by: z.string(),
  act: z.enum(['decided', 'taken back']),
  decision: decisionSchema,
  /** What held about the same thing until then. */
  before: decisionSchema.nullable(),
  /** Number of the first entry of what was done at once; journals of earlier versions do not say. */
  step: z.int().positive().optional(),
  /** Step that was undone with this entry. */
  undoes: z.int().positive().optional(),
  /** Step that was undone before and done again with this entry. */
  redoes: z.int().positive().optional(),
});

export type JournalEntry = z.output<typeof journalEntrySchema>;
