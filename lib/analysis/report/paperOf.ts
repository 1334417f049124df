import { firstDate, heldByUnit } from '../../store/questions';
import type { UnitOutlook } from '../combineChances';
import { defaultDecisionSettings } from '../decisions/defaultDecisionSettings';
import type { Decision, DecisionSettings } from '../decisions/types';
import type { DrawnFleet } from '../demand/drawnFleet';
import { sparesOf, totalsOf } from '../demand/sparesOf';
import type { Spares, SparesSettings } from '../demand/types';
import type { DriftResult, DriftSettings } from '../drift/types';
import type { Analysis } from '../openAnalysis';
import { isWholeFleet, type Scope, scopeTest } from '../scope';
import type { FleetResult } from '../types';
import { unitOutlooks } from '../unitOutlooks';
import type { HeldEffect, HeldRows, Paper, PaperSettings, ScopeDemand } from './types';

/** What a paper is made from: the answers of one day. */
export interface PaperSource {
  readonly analysis: Analysis;
  decisions(settings: DecisionSettings): Promise<readonly Decision[]>;
  drift(settings: DriftSettings): Promise<DriftResult>;
  spares(settings: SparesSettings): Promise<Spares>;
  drawnFleet(): Promise<DrawnFleet>;
}

/** The planning paper of a scope as of the day of its source. */
export async function paperOf(
  source: PaperSource,
  { scope, spares: sparesSettings, drift: driftSettings }: Omit<PaperSettings, 'asOf' | 'since'>,
): Promise<Paper> {
  const { fleet: whole, connector } = source.analysis;
  const fleet = scopedFleet(whole, scope);
  const names = new Set(fleet.units.map(({ unit }) => unit));
  const { acceptedRisk } = sparesSettings;
  const decisions = await source.decisions({ ...defaultDecisionSettings, acceptedRisk });
  const drift = await source.drift(driftSettings);
  const spares = await source.spares(sparesSettings);
  const drawn = await source.drawnFleet();
  return {
    scope,
    fleet,
    unitsInFleet: whole.units.length,
    firstDate: await firstDate(connector),
    decisions: decisions.filter(({ unit, overhaul }) => overhaul === 1 && names.has(unit)),
    drift: { ...drift, findings: drift.findings.filter(({ unit }) => names.has(unit)) },
    spares: scopedSpares(spares, fleet, drawn),
    ownDemand: isWholeFleet(scope) ? null : ownDemand(drawn, names, sparesSettings),
    held: heldRows(await heldByUnit(connector), unitOutlooks(fleet)),
  };
}

function scopedFleet(whole: FleetResult, scope: Scope): FleetResult {
  const units = whole.units.filter(scopeTest(scope));
  const names = new Set(units.map(({ unit }) => unit));
  const groups = new Set(units.map(({ group }) => group));
  return {
    ...whole,
    units,
    margins: whole.margins.filter(({ unit }) => names.has(unit)),
    fits: whole.fits.filter(({ group }) => groups.has(group)),
    problems: [],
  };
}

/** Orders of parts that frames of the scope take; demand and stock by quarter are left to the Spares page. */
function scopedSpares(spares: Spares, fleet: FleetResult, { planning }: DrawnFleet): Spares {
  const frames = new Set(fleet.units.map(({ frame }) => frame));
  const taken = new Set(
    planning.parts.flatMap(({ part, perUnit }) =>
      [...perUnit.keys()].some((frame) => frames.has(frame)) ? [part] : [],
    ),
  );
  const orders = spares.orders.filter(({ part }) => taken.has(part));
  return { ...spares, orders, totals: totalsOf(orders), demand: [], stock: [], exceedances: [] };
}

function ownDemand(
  drawn: DrawnFleet,
  names: ReadonlySet<string>,
  settings: SparesSettings,
): readonly ScopeDemand[] {
  const units = drawn.units.filter(({ unit }) => names.has(unit.plan.unit.row.unit));
  return sparesOf({ ...drawn, units }, settings).orders.map(({ part, demandMean, demandP90 }) => ({
    part,
    mean: demandMean,
    p90: demandP90,
  }));
}

/** The scope's own held rows with what they do, the most first, then those of no known unit. */
function heldRows(
  held: readonly Omit<HeldRows, 'effect'>[],
  outlooks: ReadonlyMap<string, UnitOutlook>,
): readonly HeldRows[] {
  return held
    .flatMap((row): HeldRows[] => {
      if (row.unit === null) return [{ ...row, effect: 'unit not known' }];
      const outlook = outlooks.get(row.unit);
      return outlook === undefined ? [] : [{ ...row, effect: effectOn(outlook) }];
    })
    .sort((a, b) => Number(a.unit === null) - Number(b.unit === null) || b.held - a.held);
}

function effectOn({ chanceNow, withoutForecast }: UnitOutlook): HeldEffect {
  if (chanceNow === null) return 'no forecast';
  return withoutForecast.length > 0 ? 'chance is a lower bound' : 'forecast without them';
}
