import { z } from 'zod';
import { choice, date, number, text } from './columns';

const hours = { unit: 'h', min: 0, max: 1_000_000 };

export const unitsSchema = z.object({
  unit: text('serial of the rotating assembly'),
  frame: text('size or type of the unit; limits and parts belong to a frame'),
  made_on: date('date of manufacture', { optional: true }),
  rated_life_h: number('rated life of the unit by its maker', { ...hours, optional: true }),
});

export const installationsSchema = z.object({
  unit: text('serial of the rotating assembly'),
  site: text('station, ship or other place', { optional: true }),
  engine: text('engine that the unit sits on'),
  bank: text('bank or side of the engine', { optional: true }),
  from_date: date('first day in this position'),
  to_date: date('last day in this position; empty while installed', { optional: true }),
  engine_hours_at_fit: number('reading of the engine meter when fitted', { ...hours, optional: true }),
  unit_hours_at_fit: number('hours of the unit when fitted', { ...hours, optional: true }),
});

export const planSchema = z.object({
  engine: text('engine of the position'),
  bank: text('bank of the position', { optional: true }),
  hours_per_year: number('expected running hours a year', { unit: 'h', min: 0, max: 8784 }),
  hours_now: number('hours of the unit in this position on hours_now_date', { ...hours, optional: true }),
  hours_now_date: date('day of hours_now', { optional: true }),
  next_overhaul_date: date('day of the next planned overhaul', { optional: true }),
  interval_h: number('planned hours between overhauls', { ...hours, optional: true }),
});

export const eventsSchema = z.object({
  date: date('day of the event'),
  engine: text('engine concerned'),
  kind: choice(
    'what happened: meter_replaced gives the old meter’s last reading (the new one starts at 0), meter_corrected the hours to add to later readings of the meter',
    ['meter_replaced', 'meter_corrected', 'unit_moved', 'other'],
  ),
  value: number('hours, as the kind says', { unit: 'h', min: -1_000_000, max: 1_000_000, optional: true }),
});
