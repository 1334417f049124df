import { type FileHandle, open } from 'node:fs/promises';
import { byBytes } from './byBytes';
import type { OutputFiles } from './OutputFiles';
import type { FinishedPart } from './PartTask';
import { marginLinesPath, type UnitLines } from './partStore';

/** Files of parts held open at a time: systems allow some hundreds. */
const mostOpen = 100;

/** A unit's lines in the file of its part. */
interface Place {
  readonly unit: string;
  readonly part: FinishedPart;
  readonly from: number;
  readonly bytes: number;
}

/** Writes margins.csv in order of unit by copying each unit's lines from its part; what lies together is copied together. */
export async function writeMargins(
  parts: readonly { readonly part: FinishedPart; readonly lines: readonly UnitLines[] }[],
  header: readonly string[],
  output: OutputFiles,
): Promise<void> {
  const places: Place[] = [];
  for (const { part, lines } of parts) {
    let from = 0;
    for (const { unit, bytes } of lines) {
      places.push({ unit, part, from, bytes });
      from += bytes;
    }
  }
  places.sort((a, b) => byBytes(a.unit, b.unit));
  const sources = new Sources();
  const file = await output.open('margins', header);
  for (const { part, from, bytes } of joined(places)) await file.text(await sources.read(part, from, bytes));
  await sources.close();
  await file.end();
}

function joined(places: readonly Place[]): readonly Place[] {
  const ranges: Place[] = [];
  for (const place of places) {
    const last = ranges.at(-1);
    if (last !== undefined && last.part === place.part && last.from + last.bytes === place.from)
      ranges[ranges.length - 1] = { ...last, bytes: last.bytes + place.bytes };
    else ranges.push(place);
  }
  return ranges;
}

/** Files of parts, the longest unused closed first. */
class Sources {
  private readonly handles = new Map<FinishedPart, FileHandle>();

  async read(part: FinishedPart, from: number, length: number): Promise<string> {
    const handle = this.handles.get(part) ?? (await open(marginLinesPath(part)));
    this.handles.delete(part);
    this.handles.set(part, handle);
    const [oldest] = this.handles;
    if (this.handles.size > mostOpen && oldest !== undefined) {
      await oldest[1].close();
      this.handles.delete(oldest[0]);
    }
    const { buffer } = await handle.read(Buffer.alloc(length), 0, length, from);
    return buffer.toString('utf8');
  }

  async close(): Promise<void> {
    for (const handle of this.handles.values()) await handle.close();
  }
}
