import { NoUsableReadings, sheetsOf } from '../openAnalysis';
import type { OpenOutcome } from './EngineApi';

/** The attempt was called off. */
export class Cancelled extends Error {}

/** What was read by an attempt that came to nothing. */
export const nothingRead = { files: [], problems: [], problemsFound: 0, questions: [], sheets: [] };

/** What a failed attempt tells the page: what happened, what still stands, and what was read of the files. */
export function failure(error: unknown, hasOpen: boolean): OpenOutcome {
  const stands = hasOpen ? 'What was open before is still open.' : 'No data are open.';
  if (error instanceof Cancelled) return { ok: false, message: `Stopped. ${stands}`, ...nothingRead };
  if (error instanceof NoUsableReadings) {
    const { files, problems, problemsFound, questions } = error.imported;
    return {
      ok: false,
      message: `${error.message} ${whyNone(error)} ${stands}`,
      files,
      problems,
      problemsFound,
      questions,
      sheets: sheetsOf(error.imported),
    };
  }
  const reason = error instanceof Error ? error.message : String(error);
  const end = /[.!?]$/.test(reason) ? '' : '.';
  return { ok: false, message: `This could not be opened: ${reason}${end} ${stands}`, ...nothingRead };
}

/** A reason as it stands beside a file, as a sentence of its own. */
function asSentence(reason: string): string {
  const end = /[.!?]$/.test(reason) ? '' : '.';
  return `${reason.slice(0, 1).toUpperCase()}${reason.slice(1)}${end}`;
}

/** What to do about files without a usable reading, from what they held. */
function whyNone(error: NoUsableReadings): string {
  const { files } = error.imported;
  if (files.length === 0) return 'No file was given.';
  if (files.every((file) => file.table === null))
    return files.length === 1
      ? asSentence(files[0]?.message ?? 'It was not recognised')
      : 'None of the files was recognised: see the reason beside each.';
  if (files.every((file) => file.readingsIn === 0))
    return files.some((file) => file.table === null)
      ? 'Some were not recognised, and the others hold no readings: see the reason beside each.'
      : 'There are tables but no readings: add readings.csv and overhauls.csv, or a sheet with one row an overhaul.';
  return error.imported.questions.length > 0
    ? 'Every reading waits for an answer: see the questions.'
    : 'Every reading is held: see the reasons below.';
}
