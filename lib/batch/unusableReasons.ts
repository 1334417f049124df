import type { NoUsableReadings } from '../analysis/openAnalysis';

/** Why files hold no usable reading, a sentence a file. */
export function unusableReasons({ imported }: NoUsableReadings): readonly string[] {
  return imported.files.map(
    (file) =>
      `${file.file}: ${file.message ?? `${file.rowsHeld} of ${file.rowsIn} rows held, see problems.csv`}`,
  );
}
