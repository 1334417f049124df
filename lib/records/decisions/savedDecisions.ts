import { z } from 'zod';
import { clockPositions } from '../characteristics';
import { sheetShape } from '../intake/sheetShape';
import type { AnswerDecision, Decision, MeaningDecision } from './Decision';
import { meaningDecision } from './meaningDecision';

const form = 'answers and column meanings of overhaul sheets';
const version = 1;
/** Larger files are none of ours. */
export const largestSavedFile_bytes = 20_000_000;

const savedMeaning = z.object({
  /** Place of the column in the sheet, from 1. */
  place: z.int().positive().max(4096),
  column: z.string(),
  read_as: z.string(),
  characteristic: z.string().nullable(),
  stage: z.enum(['found', 'left']).nullable(),
  clock: z.enum(clockPositions).nullable(),
  unit_of_measure: z.string().nullable(),
});

const savedAnswer = z.object({
  id: z.string().min(1),
  column: z.string(),
  question: z.string(),
  answer: z.string(),
});

const savedSheet = z.object({
  /** File on which it was decided. */
  file: z.string(),
  /** Shape of the sheets it holds for, see sheetShape; null if the answers are for the file of that name alone. */
  shape: z.string().nullable(),
  /** Names of the sheet's columns, if it was open when this was saved. */
  columns: z.array(z.string()).nullable(),
  meanings: z.array(savedMeaning),
  answers: z.array(savedAnswer),
});

const savedFile = z.object({
  form: z.literal(form),
  version: z.literal(version),
  sheets: z.array(savedSheet),
});

/** A sheet as far as saving needs it. */
export interface KnownSheet {
  readonly file: string;
  readonly shape: string;
  readonly names: readonly string[];
}

/** The text of a file that holds the answers and column meanings among the decisions; `sheets` are those that are open. */
export function savedDecisions(decisions: readonly Decision[], sheets: readonly KnownSheet[]): string {
  const saved = new Map<string, z.output<typeof savedSheet>>();
  const sheetOf = (file: string, shape: string | null) => {
    const key = JSON.stringify([file, shape]);
    const names = sheets.find((sheet) => sheet.shape === shape)?.names;
    const sheet = saved.get(key) ?? {
      file,
      shape,
      columns: names === undefined ? null : [...names],
      meanings: [],
      answers: [],
    };
    saved.set(key, sheet);
    return sheet;
  };
  for (const decision of decisions) {
    if (decision.kind === 'meaning') {
      const { file, shape, index, column, role, characteristic, stage, clock, uom } = decision;
      const meaning = { place: index + 1, column, read_as: role, characteristic, stage, clock };
      sheetOf(file, shape).meanings.push({ ...meaning, unit_of_measure: uom });
    }
    if (decision.kind === 'answer') {
      const { file, id, column, question, answer } = decision;
      const shape = decision.shape ?? sheets.find((sheet) => sheet.file === file)?.shape ?? null;
      sheetOf(file, shape).answers.push({ id, column, question, answer });
    }
  }
  return `${JSON.stringify({ form, version, sheets: [...saved.values()] }, null, 2)}\n`;
}

/** A file that is none of saved answers, or a damaged one; the message says why. */
export class UnreadableDecisions extends Error {}

/**
 * Reads what savedDecisions wrote; answers come with the shape of their sheet, so that those about its form hold for every
 * file of that shape.
 *
 * @throws UnreadableDecisions with the place and the reason if any part of it is foreign or damaged; nothing is read in part
 */
export function readSavedDecisions(text: string): readonly (AnswerDecision | MeaningDecision)[] {
  const read = savedFile.safeParse(parsed(text));
  if (!read.success) throw new UnreadableDecisions(reasonOf(read.error));
  return read.data.sheets.flatMap((sheet) => {
    const { file, shape, columns } = sheet;
    if (columns !== null && sheetShape(columns) !== shape)
      throw new UnreadableDecisions(
        `The columns listed for '${file}' do not agree with its shape '${shape}': the file was changed. Save it again where it came from.`,
      );
    return [
      ...sheet.meanings.map((one) => meaningOf(one, file, shape)),
      ...sheet.answers.map(answerIn(file, shape)),
    ];
  });
}

function parsed(text: string): unknown {
  let content: unknown;
  try {
    content = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    throw new UnreadableDecisions(
      'This is not a file of saved answers: it is not in JSON, or it is cut off. Take the file as it was saved on the Records page.',
    );
  }
  const found = content as { form?: unknown; version?: unknown } | null;
  if (typeof content !== 'object' || found?.form !== form)
    throw new UnreadableDecisions(`This is not a file of saved answers: it does not say "form": "${form}".`);
  if (found.version !== version)
    throw new UnreadableDecisions(
      `This file of saved answers is of version ${JSON.stringify(found.version) ?? 'none'}; version ${version} can be read here.`,
    );
  return content;
}

function reasonOf(error: z.ZodError): string {
  const [first] = error.issues;
  const place = (first?.path ?? [])
    .map((step) => (typeof step === 'number' ? `${step + 1}` : String(step)))
    .join(' ');
  return `The file of saved answers is damaged at ${place}: ${first?.message ?? 'it cannot be read'}. Save it again where it came from.`;
}

function meaningOf(one: z.output<typeof savedMeaning>, file: string, shape: string | null): MeaningDecision {
  if (shape === null)
    throw new UnreadableDecisions(
      `The file of saved answers is damaged: the meanings of '${file}' have no shape. Save it again where it came from.`,
    );
  const { place, column, read_as: role, characteristic, stage, clock, unit_of_measure: uom } = one;
  return meaningDecision({ file, shape, index: place - 1, column, role, characteristic, stage, clock, uom });
}

function answerIn(file: string, shape: string | null) {
  return (one: z.output<typeof savedAnswer>): AnswerDecision => ({
    kind: 'answer',
    ...one,
    file,
    ...(shape === null ? {} : { shape }),
  });
}
