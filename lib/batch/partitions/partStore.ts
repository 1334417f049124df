import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { Cell } from '../../analysis/fleetTables';
import { csvLines } from '../../records/csv/writeCsv';
import type { FinishedPart } from './PartTask';
import type { PartResult, SisterBlock } from './partResult';

/** Lines of one unit in a part's margins, one after another in the order of units. */
export interface UnitLines {
  readonly unit: string;
  readonly bytes: number;
}

/** A part's contribution but for the tables that grow with its units. */
export type PartSummary = Omit<PartResult, 'margins' | 'sisters' | 'histories'> & {
  readonly unitLines: readonly UnitLines[];
};

const files = {
  finished: 'finished.bin',
  summary: 'summary.bin',
  sisters: 'sisters.bin',
  margins: 'margins.lines',
};

/** Keeps a part's results in a folder that is there as a whole or not at all. */
export async function keepPart(finished: FinishedPart, result: PartResult): Promise<void> {
  const { folder } = finished;
  const { margins, sisters, histories: _, ...rest } = result;
  const making = `${folder}.part`;
  await rm(making, { recursive: true, force: true });
  await mkdir(making, { recursive: true });
  const unitLines: UnitLines[] = [];
  const texts: string[] = [];
  for (const [unit, rows] of rowsByUnit(margins)) {
    const text = csvLines(rows);
    texts.push(text);
    unitLines.push({ unit, bytes: Buffer.byteLength(text) });
  }
  await writeFile(join(making, files.margins), texts.join(''));
  await writeFile(join(making, files.sisters), serialize(sisters));
  await writeFile(join(making, files.summary), serialize({ ...rest, unitLines } satisfies PartSummary));
  await writeFile(join(making, files.finished), serialize(finished));
  await rename(making, folder);
}

function rowsByUnit(rows: readonly (readonly Cell[])[]): ReadonlyMap<string, (readonly Cell[])[]> {
  const byUnit = new Map<string, (readonly Cell[])[]>();
  for (const row of rows) {
    const unit = String(row[0]);
    const own = byUnit.get(unit);
    if (own === undefined) byUnit.set(unit, [row]);
    else own.push(row);
  }
  return byUnit;
}

/** What was kept of a part in an earlier run, or null. */
export async function finishedPart(folder: string): Promise<FinishedPart | null> {
  const path = join(folder, files.finished);
  return existsSync(path) ? deserialize(await readFile(path)) : null;
}

export async function partSummary({ folder }: FinishedPart): Promise<PartSummary> {
  return deserialize(await readFile(join(folder, files.summary)));
}

export async function partSisters({ folder }: FinishedPart): Promise<readonly SisterBlock[]> {
  return deserialize(await readFile(join(folder, files.sisters)));
}

/** Where a part's lines of margins.csv lie. */
export function marginLinesPath({ folder }: FinishedPart): string {
  return join(folder, files.margins);
}
