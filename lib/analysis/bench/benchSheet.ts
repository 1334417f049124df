import { chancePast } from '../../stats/wear/forecast';
import { defaultDecisionSettings } from '../decisions/defaultDecisionSettings';
import type { FleetResult } from '../types';
import { hoursAtDate } from '../unitNow';
import { boxName } from './benchEntry';
import { clocksOf } from './boxes';
import { boxLine, expectedOf } from './boxLine';
import { checkBasis, lineFound } from './checkBasis';
import { partChances } from './partChances';
import { typedHours } from './typedReading';
import type { BenchSheet, SheetItem, SheetSeries } from './types';
import type { ItemBench, UnitBench } from './unitBench';

/** Hours on the unit that a sheet holds for, and where they come from. */
export function sheetHours(
  { unit }: UnitBench,
  asOf: string,
  hoursText: string,
  date: string,
): Pick<BenchSheet, 'date' | 'unitHours' | 'hoursFrom'> {
  const typed = typedHours(hoursText).hours;
  const day = date === '' ? unit.row.nextOverhaulDate : date;
  if (typed !== null) return { date: day, unitHours: typed, hoursFrom: 'typed' };
  const planned = hoursAtDate(day, unit.hoursNow, unit.hoursPerYear, asOf);
  if (planned !== null) return { date: day, unitHours: planned, hoursFrom: 'plan' };
  return { date: day, unitHours: unit.hoursNow, hoursFrom: unit.hoursNow === null ? null : 'now' };
}

/** The sheet of a unit's next overhaul, for the hours and day typed, else for those planned. */
export function benchSheet(
  bench: UnitBench,
  { asOf, source }: Pick<FleetResult, 'asOf' | 'source'>,
  hoursText: string,
  date: string,
): BenchSheet {
  const at = sheetHours(bench, asOf, hoursText, date);
  const [last = null] = bench.history;
  return {
    unit: bench.unit.row,
    asOf,
    source,
    ...at,
    last: last === null ? null : { date: last.date, unitHours: last.unitHours, workshop: last.workshop },
    items: bench.items.map((item) => sheetItem(item, bench, at.unitHours)),
    parts: partChances(bench, at.unitHours, defaultDecisionSettings.acceptedRisk),
    acceptedRisk: defaultDecisionSettings.acceptedRisk,
    workshops: bench.workshops,
  };
}

function sheetItem(item: ItemBench, bench: UnitBench, unitHours: number | null): SheetItem {
  const basis = checkBasis(item, bench.unit, unitHours, []);
  const { characteristic } = item;
  return {
    characteristic,
    shape: item.shape,
    boxes: clocksOf(basis).map((clock) => ({
      clock,
      found: boxName(characteristic, 'found', clock),
      left: boxName(characteristic, 'left', clock),
      lastLeft_mm: item.lastLeft?.values_mm.get(clock ?? '') ?? null,
      expectedFound: expectedOf(boxLine(basis, 'found', clock), item.neverNegative),
    })),
    series: item.bounds
      .filter(
        ({ series, limits }) => limits.length > 0 || item.shape === 'single' || series.endsWith('_mean'),
      )
      .map((bounds) => sheetSeries(item, bounds, bench, unitHours)),
    lastLeftDate: item.lastLeft?.date ?? null,
    resetParts: item.resetParts,
    gaugeSd_mm: item.gauge?.sd_mm ?? null,
    gaugeFrom: item.gauge?.from ?? null,
    reason: basis.forecasts.found.reason,
  };
}

function sheetSeries(
  item: ItemBench,
  { series, limits, assembly }: ItemBench['bounds'][number],
  bench: UnitBench,
  unitHours: number | null,
): SheetSeries {
  const at = lineFound(item.questions.get(series), unitHours);
  const left = bench.readings.get(series)?.findLast(({ stage }) => stage === 'left');
  const chances =
    'reason' in at ? [] : limits.map(({ limit_mm, kind }) => chancePast(at.line, limit_mm, kind, at.x));
  return {
    series,
    limits,
    assembly,
    lastLeft_mm: left?.value_mm ?? null,
    expectedFound: 'reason' in at ? null : expectedOf(at, item.neverNegative),
    reason: 'reason' in at ? at.reason : null,
    chancePast: chances.length === 0 ? null : Math.max(...chances),
  };
}
