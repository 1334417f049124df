import { combineChances, type UnitOutlook } from './combineChances';
import { runThrough } from './steps';
import type { FleetResult, MarginRow } from './types';

/** Margins and units that are gone through in one step: some ten milliseconds. */
const inStep = { margins: 6_000, units: 600 };

type Known = Pick<FleetResult, 'units' | 'margins' | 'characteristics'>;

/**
 * What the limited series of every unit say together, in the order of the units.
 *
 * @param series the only series that is looked at; empty for all
 */
export function unitOutlooks(known: Known, series = ''): ReadonlyMap<string, UnitOutlook> {
  return runThrough(outlooksInSteps(known, series));
}

/** The same in short steps, for a page that answers meanwhile. */
export function* outlooksInSteps(
  { units, margins, characteristics }: Known,
  series = '',
): Generator<void, ReadonlyMap<string, UnitOutlook>> {
  const codes = characteristics.map(({ code }) => code);
  const marginsOf = new Map<string, MarginRow[]>();
  for (const [place, margin] of margins.entries()) {
    if (place % inStep.margins === inStep.margins - 1) yield;
    if (series !== '' && margin.series !== series) continue;
    const { unit } = margin;
    const ofUnit = marginsOf.get(unit);
    if (ofUnit === undefined) marginsOf.set(unit, [margin]);
    else ofUnit.push(margin);
  }
  const outlooks = new Map<string, UnitOutlook>();
  for (const [place, { unit }] of units.entries()) {
    if (place % inStep.units === inStep.units - 1) yield;
    outlooks.set(unit, combineChances(marginsOf.get(unit) ?? [], codes));
  }
  return outlooks;
}
