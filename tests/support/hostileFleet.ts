import { csvFormatRows } from 'd3-dsv';
import { hostileTexts } from './hostileTexts';
import type { DroppedTestFile } from './openSite';

type Rows = readonly (readonly (string | number)[])[];

const file = (name: string, header: string, rows: Rows): DroppedTestFile => ({
  name: `${name}.csv`,
  content: csvFormatRows([header.split(','), ...rows.map((row) => row.map(String))]),
});

/**
 * The canonical tables of a fleet in which each of a hundred hostile texts stands in every field of text, as any program
 * would write them: two units of each frame, four overhauls of each unit, the part fitted at the first.
 */
export function hostileFleet(outside: string): readonly DroppedTestFile[] {
  const texts = hostileTexts(outside);
  const units = texts.flatMap((text, index) =>
    [1, 2].map((sister) => ({ text, unit: `${text} ${sister}`, engine: `${text} E${index}${sister}` })),
  );
  const overhauls = units.flatMap((one, index) =>
    [2014, 2016, 2018, 2020].map((year, turn) => ({
      ...one,
      overhaul: `${one.text} ${index}/${turn}`,
      date: `${year}-03-01`,
      hours: turn * 8_000,
      fitted: turn === 0 ? one.text : '',
      found: 0.2 + 0.04 * turn + 0.002 * (index % 7),
    })),
  );
  return [
    file(
      'units',
      'unit,frame',
      units.map(({ unit, text }) => [unit, text]),
    ),
    file(
      'installations',
      'unit,site,engine,bank,from_date',
      units.map(({ unit, text, engine }) => [unit, text, engine, text, '2013-01-01']),
    ),
    file(
      'overhauls',
      'overhaul,unit,date,unit_hours,site,engine,bank,workshop,fitted,remarks',
      overhauls.map(({ overhaul, unit, date, hours, fitted, text, engine }) => [
        overhaul,
        unit,
        date,
        hours,
        text,
        engine,
        text,
        text,
        fitted,
        text,
      ]),
    ),
    file(
      'readings',
      'overhaul,characteristic,stage,value,uom,source_file,source_row',
      overhauls.flatMap(({ overhaul, found, text }, index) => [
        [overhaul, 'thrust_play', 'found', found.toFixed(3), 'mm', text, index],
        [overhaul, 'thrust_play', 'left', text, 'mm', text, index],
      ]),
    ),
    file(
      'limits',
      'frame,series,limit_kind,limit,reset_by,source',
      texts.map((text) => [text, 'thrust_play', 'upper', 0.5, text, text]),
    ),
    file(
      'parts',
      'part,name,frame,resets,per_unit,lead_time_weeks,unit_cost,currency',
      texts.map((text) => [text, text, text, 'thrust_play', 1, 10, 100, text]),
    ),
    file(
      'plan',
      'engine,bank,hours_per_year,next_overhaul_date',
      units.map(({ text, engine }) => [engine, text, 4000, '2023-03-01']),
    ),
    file(
      'events',
      'date,engine,kind',
      units.map(({ engine }) => ['2016-01-01', engine, 'other']),
    ),
  ];
}
