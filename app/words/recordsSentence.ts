import type { ImportedFile } from '../../lib/analysis/types';
import { formatCount } from '../../lib/charts/format';
import type { EngineState } from '../engine/engineState';
import { counted } from './counted';
import { waitingSentence } from './questionWords';
import { isDemoSite, siteFleetName } from './siteFleet';

/** Sums over files: rows in = used + held, cells for readings in = used + no reading + held. */
export function sumsOf(files: readonly ImportedFile[]) {
  const sum = (count: (file: ImportedFile) => number) =>
    files.reduce((total, file) => total + count(file), 0);
  return {
    rowsIn: sum((file) => file.rowsIn),
    rowsUsed: sum((file) => file.rowsUsed),
    rowsHeld: sum((file) => file.rowsHeld),
    readingsIn: sum((file) => file.readingsIn),
    readingsUsed: sum((file) => file.readingsUsed),
    readingsNone: sum((file) => file.readingsNone),
    readingsHeld: sum((file) => file.readingsHeld),
  };
}

function openSentences({ fleet, work }: EngineState): string {
  if (fleet === null) return work === null ? 'Nothing is open.' : 'The data are being opened.';
  const sums = sumsOf(fleet.files);
  const whose =
    fleet.source === 'demo'
      ? `The ${siteFleetName()} is open: ${counted(fleet.files.length, 'file')}${isDemoSite() ? ' of synthetic records' : ''}`
      : `Your ${counted(fleet.files.length, 'file')} ${fleet.files.length === 1 ? 'is' : 'are'} open`;
  const rows = `${counted(sums.rowsIn, 'row')} came in, ${formatCount(sums.rowsUsed)} used and ${formatCount(sums.rowsHeld)} held`;
  const cells = `of ${counted(sums.readingsIn, 'cell')} for readings, ${formatCount(sums.readingsUsed)} used, ${formatCount(sums.readingsNone)} no reading and ${formatCount(sums.readingsHeld)} held`;
  return `${whose}. ${rows}; ${cells}.`;
}

/** The answer of the Records page in words: what is open, what came in, what was used or held, which questions wait. */
export function recordsSentence(state: EngineState): string {
  const { attempt, fleet } = state;
  const waiting = waitingSentence((attempt ?? fleet)?.questions ?? []);
  if (waiting === null) return openSentences(state);
  const where = attempt === null ? '' : 'About the files that could not be used, ';
  return `${openSentences(state)} ${where}${waiting}`;
}
