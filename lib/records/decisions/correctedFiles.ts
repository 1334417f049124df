import type { InputFile } from '../importReport';
import type { RulingDecision } from './Decision';
import { type CorrectedRows, readHeldRowsCsv } from './readHeldRowsCsv';
import type { RulingOutcome } from './rulings';

/** Most lines of a corrected file that a report names. */
const linesNamed = 10;

/** Parts files into those with records and corrected files of held rows. */
export function partCorrected(
  files: readonly InputFile[],
  by: string,
): { readonly files: readonly InputFile[]; readonly corrected: readonly CorrectedRows[] } {
  const corrected: CorrectedRows[] = [];
  const others = files.filter((file) => {
    const rows = readHeldRowsCsv(file, by);
    if (rows !== null) corrected.push(rows);
    return rows === null;
  });
  return { files: others, corrected };
}

/** Rulings of corrected files, in order. */
export function rulingsIn(corrected: readonly CorrectedRows[]): readonly RulingDecision[] {
  return corrected.flatMap(({ given }) => given.map(({ ruling }) => ruling));
}

/**
 * What came of a corrected file, in sentences: how many rulings were applied, and each line that was not, with the reason.
 *
 * @param outcomes what came of the rulings when the files were read with them
 */
export function correctedReport(
  { file, given, faults, untouched }: CorrectedRows,
  outcomes: readonly RulingOutcome[],
): string {
  const found = new Map(outcomes.map((one) => [one.id, one.notApplied]));
  const failed = given.flatMap(({ line, ruling }) => {
    const reason = found.has(ruling.id) ? found.get(ruling.id) : 'the files could not be read with it';
    return reason === null || reason === undefined ? [] : [{ line, reason }];
  });
  const notApplied = [...faults, ...failed].sort((a, b) => a.line - b.line);
  const applied = given.length - failed.length;
  const counts = `${file}: ${applied} of ${given.length + faults.length} rulings applied; lines without one: ${untouched}.`;
  const named = notApplied.slice(0, linesNamed).map(({ line, reason }) => `Line ${line}: ${reason}.`);
  const more = notApplied.length - named.length;
  return [
    counts,
    ...named,
    ...(more > 0 ? [`Lines not applied besides: ${more}; each is listed with its reason.`] : []),
  ].join(' ');
}
