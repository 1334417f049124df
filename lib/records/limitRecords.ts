import { z } from 'zod';
import { choice, codes, date, number, text } from './columns';

const length = { unit: 'mm', min: -100, max: 1000 };

export const limitsSchema = z.object({
  frame: text('frame that the limit belongs to'),
  series: text('series that the limit belongs to'),
  limit_kind: choice('side on which the limit lies', ['upper', 'lower']),
  limit: number('value that the series must not pass', length),
  assembly_lower: number('lowest value allowed as left', { ...length, optional: true }),
  assembly_upper: number('highest value allowed as left', { ...length, optional: true }),
  reset_by: codes('what starts a new run: ‘assembly’, or part codes parted by semicolons', {
    optional: true,
  }),
  source: text('document that states the limit', { optional: true }),
  valid_from: date('first day the limit holds', { optional: true }),
});

export const partsSchema = z.object({
  part: text('part code'),
  name: text('name of the part', { optional: true }),
  frame: text('frame that the part fits'),
  resets: codes('series that start anew when the part is fitted, parted by semicolons', { optional: true }),
  per_unit: number('pieces a unit', { min: 0, max: 10_000, optional: true }),
  lead_time_weeks: number('weeks from order to delivery', {
    unit: 'weeks',
    min: 0,
    max: 1000,
    optional: true,
  }),
  unit_cost: number('cost of one piece', { min: 0, max: 1e9, optional: true }),
  currency: text('currency of unit_cost', { optional: true }),
  on_hand: number('pieces in stock', { min: 0, max: 1e6, optional: true }),
  on_order: number('pieces on order', { min: 0, max: 1e6, optional: true }),
  due: date('day the order is due', { optional: true }),
});
