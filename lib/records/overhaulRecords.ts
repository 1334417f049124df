import { z } from 'zod';
import { clockPositions } from './characteristics';
import { choice, codes, date, number, text } from './columns';
import { lengthUnits } from './lengthUnits';

const hours = { unit: 'h', min: 0, max: 1_000_000 };
const value = { unit: 'as uom says', min: -100_000, max: 100_000, optional: true, holdsRow: true };

export const overhaulsSchema = z.object({
  overhaul: text('identifier of this opening of this unit'),
  unit: text('serial of the rotating assembly'),
  date: date('day of the overhaul'),
  unit_hours: number('hours of the unit; derived from engine_hours if empty', { ...hours, optional: true }),
  engine_hours: number('reading of the engine meter', { ...hours, optional: true }),
  site: text('station, ship or other place', { optional: true }),
  engine: text('engine that the unit came from', { optional: true }),
  bank: text('bank or side of the engine', { optional: true }),
  workshop: text('who did the work', { optional: true }),
  kind: choice('why the unit was opened', ['planned', 'unplanned'], { optional: true }),
  fitted: codes('codes of the parts fitted, parted by semicolons', { optional: true }),
  remarks: text('remarks of the workshop', { optional: true }),
});

export const readingsSchema = z.object({
  overhaul: text('identifier of the overhaul'),
  characteristic: text('what was measured: a built-in code or one of characteristics.csv'),
  stage: choice('found: before stripping; left: after reassembly', ['found', 'left']),
  clock: choice(
    'clock position seen from the compressor end; empty for a single reading',
    clockPositions as unknown as [string, ...string[]],
    {
      optional: true,
      holdsRow: true,
    },
  ),
  value: number('the reading, in the unit of uom; empty if lower and upper are given', value),
  uom: choice('unit of measure of value, lower and upper', lengthUnits),
  lower: number('lower end of an interval reading (the feeler that goes)', value),
  upper: number('upper end of an interval reading (the feeler that does not go)', value),
  source_file: text('file that the reading came from, if not this one', { optional: true }),
  source_row: number('line in that file', { min: 0, max: 1e9, optional: true }),
});

export const characteristicsSchema = z.object({
  characteristic: text('code of the added characteristic'),
  name: text('name for screens'),
  shape: choice('one reading, or four clock positions', ['single', 'four_clock']),
  never_negative: choice('whether a negative reading is impossible', ['yes', 'no']),
});
