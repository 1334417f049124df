import { TextFile } from '../TextFile';
import { benchFleet } from './benchFleet';
import { overhaulLine, overhaulsHeader, readingLines, readingsHeader } from './canonicalLines';
import type { MadeOverhaul } from './madeUnit';

/** Where the files of one form lie. */
export interface BenchFile {
  readonly name: string;
  readonly path: string;
}

const inWords = {
  thrust_play: 'Thrust play',
  runout: 'Runout',
  tip_compressor: 'Tip clearance compressor',
  tip_turbine: 'Tip clearance turbine',
  found: 'as found',
  left: 'as left',
} as const;

/** Writes the bench fleet as canonical overhauls.csv and readings.csv. */
export async function writeCanonicalFiles(folder: string, readings: number): Promise<readonly BenchFile[]> {
  const paths = ['overhauls.csv', 'readings.csv'].map((name) => ({ name, path: `${folder}/${name}` }));
  const [overhauls, lines] = paths.map(({ path }) => new TextFile(path)) as [TextFile, TextFile];
  await overhauls.line(overhaulsHeader);
  await lines.line(readingsHeader);
  let row = 1;
  for (const overhaul of benchFleet(readings)) {
    await overhauls.line(overhaulLine(overhaul, ''));
    for (const line of readingLines(overhaul, ++row)) await lines.line(line);
  }
  await overhauls.end();
  await lines.end();
  return paths;
}

/** Writes the bench fleet as a workshop's own long sheet: semicolons, decimal commas, day first, words of its own. */
export async function writeLongSheet(folder: string, readings: number): Promise<readonly BenchFile[]> {
  const file = { name: 'workshop.csv', path: `${folder}/workshop.csv` };
  const lines = new TextFile(file.path);
  await lines.line('Serial no.;Date;Running hours;Measurement;Condition;Clock;Reading;Unit');
  for (const overhaul of benchFleet(readings))
    for (const line of sheetLines(overhaul)) await lines.line(line);
  await lines.end();
  return [file];
}

function sheetLines({ unit, date, unitHours, readings }: MadeOverhaul): readonly string[] {
  const [year, month, day] = date.split('-');
  return readings.map(({ characteristic, stage, clock, value_mm }) => {
    const value = value_mm.toFixed(3).replace('.', ',');
    return `${unit};${day}.${month}.${year};${unitHours};${inWords[characteristic]};${inWords[stage]};${clock};${value};mm`;
  });
}
