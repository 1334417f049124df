import { z } from 'zod';
import type { clockPositions } from '../../records/characteristics';
import { lengthUnits } from '../../records/lengthUnits';

export type Stage = 'found' | 'left';
export type Clock = (typeof clockPositions)[number];

/** What a fitter has typed of one overhaul, as typed; kept in the browser until it is saved or discarded. */
export const benchEntrySchema = z.object({
  unit: z.string(),
  /** YYYY-MM-DD; empty until given. */
  date: z.string(),
  /** Hours on the unit as typed. */
  unitHours: z.string(),
  workshop: z.string(),
  kind: z.enum(['planned', 'unplanned']),
  /** Codes of the parts fitted. */
  fitted: z.array(z.string()),
  remarks: z.string(),
  /** Unit of measure of the readings that state none. */
  uom: z.enum(lengthUnits),
  /** Typed text of each box, by its name. */
  texts: z.record(z.string(), z.string()),
  /** Boxes whose questioned reading was measured again and stands, with the text that stands. */
  stands: z.record(z.string(), z.string()),
});

export type BenchEntry = Readonly<z.output<typeof benchEntrySchema>>;

/** An overhaul of which nothing is typed yet. */
export function emptyEntry(unit: string): BenchEntry {
  return {
    unit,
    date: '',
    unitHours: '',
    workshop: '',
    kind: 'planned',
    fitted: [],
    remarks: '',
    uom: 'mm',
    texts: {},
    stands: {},
  };
}

/** Name of the box of one reading. */
export function boxName(characteristic: string, stage: Stage, clock: Clock | null): string {
  return clock === null ? `${characteristic} ${stage}` : `${characteristic} ${stage} ${clock}`;
}
