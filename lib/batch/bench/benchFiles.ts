import { createWriteStream } from 'node:fs';
import { finished } from 'node:stream/promises';
import { type BenchReading, benchFleet } from './benchFleet';

/** Where the files of one form lie. */
export interface BenchFile {
  readonly name: string;
  readonly path: string;
}

const piece_bytes = 1 << 20;
const inWords = {
  thrust_play: 'Thrust play',
  runout: 'Runout',
  tip_compressor: 'Tip clearance compressor',
  tip_turbine: 'Tip clearance turbine',
  found: 'as found',
  left: 'as left',
} as const;

/** Writes lines piece by piece, waiting where the disk is slower. */
class LineFile {
  private readonly stream;
  private piece: string[] = [];
  private length = 0;

  constructor(path: string) {
    this.stream = createWriteStream(path);
  }

  async line(text: string): Promise<void> {
    this.piece.push(text);
    this.length += text.length + 1;
    if (this.length >= piece_bytes) await this.flush();
  }

  async end(): Promise<void> {
    await this.flush();
    this.stream.end();
    await finished(this.stream);
  }

  private async flush(): Promise<void> {
    if (this.piece.length === 0) return;
    const isTaken = this.stream.write(`${this.piece.join('\n')}\n`);
    this.piece = [];
    this.length = 0;
    if (!isTaken) await new Promise<void>((resolve) => this.stream.once('drain', resolve));
  }
}

/** Writes the bench fleet as canonical overhauls.csv and readings.csv. */
export async function writeCanonicalFiles(folder: string, readings: number): Promise<readonly BenchFile[]> {
  const paths = ['overhauls.csv', 'readings.csv'].map((name) => ({ name, path: `${folder}/${name}` }));
  const [overhauls, lines] = paths.map(({ path }) => new LineFile(path)) as [LineFile, LineFile];
  await overhauls.line('overhaul,unit,date,unit_hours,workshop');
  await lines.line('overhaul,characteristic,stage,clock,value,uom,lower,upper,source_file,source_row');
  let last = '';
  let row = 1;
  for (const reading of benchFleet(readings)) {
    if (reading.overhaul !== last) {
      last = reading.overhaul;
      row++;
      await overhauls.line(`${last},${reading.unit},${reading.date},${reading.unitHours},North yard`);
    }
    const { characteristic, stage, clock, value_mm } = reading;
    await lines.line(
      `${last},${characteristic},${stage},${clock},${value_mm.toFixed(3)},mm,,,job-${row}.csv,${row}`,
    );
  }
  await overhauls.end();
  await lines.end();
  return paths;
}

/** Writes the bench fleet as a workshop's own long sheet: semicolons, decimal commas, day first, words of its own. */
export async function writeLongSheet(folder: string, readings: number): Promise<readonly BenchFile[]> {
  const file = { name: 'workshop.csv', path: `${folder}/workshop.csv` };
  const lines = new LineFile(file.path);
  await lines.line('Serial no.;Date;Running hours;Measurement;Condition;Clock;Reading;Unit');
  for (const reading of benchFleet(readings)) await lines.line(sheetLine(reading));
  await lines.end();
  return [file];
}

function sheetLine({ unit, date, unitHours, characteristic, stage, clock, value_mm }: BenchReading): string {
  const [year, month, day] = date.split('-');
  const value = value_mm.toFixed(3).replace('.', ',');
  return `${unit};${day}.${month}.${year};${unitHours};${inWords[characteristic]};${inWords[stage]};${clock};${value};mm`;
}
