import { group } from 'd3-array';
import { partsInStock, seriesResets, unitPositions } from '../../store/questions';
import type { Analysis } from '../openAnalysis';
import { codesOf, type PartStock, partStocks } from './partStocks';
import { type SeriesPlan, type SeriesRule, seriesPlans } from './seriesPlans';
import type { PlanMessage, UnitPlan } from './types';

/** Pieces of a part. */
export interface Pieces {
  readonly part: string;
  readonly pieces: number;
}

/** A unit with everything that its decisions and its demand are made from. */
export interface PlanningUnit {
  readonly plan: UnitPlan;
  readonly frame: string;
  readonly series: readonly SeriesPlan[];
  /** Parts without a series, fitted at every overhaul. */
  readonly consumables: readonly Pieces[];
  /** The part that starts the rated life anew; null if parts.csv names none for the frame. */
  readonly rotatingPart: Pieces | null;
  /** Pieces a unit of each part that renews a series. */
  readonly pieces: ReadonlyMap<string, number>;
}

/** The fleet as its decisions and its demand are planned from. */
export interface Planning {
  readonly asOf: string;
  readonly units: readonly PlanningUnit[];
  readonly parts: readonly PartStock[];
  readonly messages: readonly PlanMessage[];
}

/** The part that renews this series is the rotating assembly, whose rated life units.csv gives. */
export const rotatingSeries = 'runout';

/** Reads plan, parts and reset rules and puts them beside the fits. */
export async function planningOf(analysis: Analysis): Promise<Planning> {
  const { connector, fleet, units, index } = analysis;
  const positions = await unitPositions(connector, fleet.asOf);
  const rows = await partsInStock(connector);
  const rules = await seriesResets(connector);
  const ruleOf = new Map(
    rules.map((rule) => [
      `${rule.frame}\u0000${rule.series}`,
      seriesRule(rule.characteristic, codesOf(rule.codes)),
    ]),
  );
  const frames = new Set(positions.map((position) => position.frame));
  const known = partStocks(rows, frames, fleet.asOf);
  const messages: PlanMessage[] = [...known.messages];
  const byFrame = group(
    known.parts.flatMap((part) => [...part.perUnit.keys()].map((frame) => ({ frame, part }))),
    (entry) => entry.frame,
  );
  const planned = positions.flatMap((position) => {
    const unit = units.get(position.unit);
    if (unit === undefined) return [];
    const parts = (byFrame.get(position.frame) ?? []).map((entry) => entry.part);
    const { interval_h, last_hours: lastHours } = position;
    const plan = { unit, installed: position.installed === 1, interval_h, lastHours };
    const series = seriesPlans(index.questionsOf(unit), ruleOf, parts);
    return [{ plan, frame: position.frame, series, ...partsOfUnit(position.frame, parts, series) }];
  });
  const missing = missingParts(planned, known.parts);
  for (const { part } of missing) {
    messages.push({
      about: 'part',
      name: part,
      text: 'limits.csv names it as what renews a series, but parts.csv does not hold it: no stock, no order',
    });
  }
  messages.push(...seriesMessages(planned), ...lifeMessages(planned));
  return { asOf: fleet.asOf, units: planned, parts: [...known.parts, ...missing], messages };
}

function seriesRule(characteristic: string, codes: readonly string[]): SeriesRule {
  const parts = codes.filter((code) => code !== 'assembly');
  return { characteristic, parts, byPart: codes.length > 0 && !codes.includes('assembly') };
}

function partsOfUnit(frame: string, parts: readonly PartStock[], series: readonly SeriesPlan[]) {
  const renewing = parts.filter((part) => (part.resets.get(frame) ?? []).length > 0);
  const rotating = renewing.find((part) => part.resets.get(frame)?.includes(rotatingSeries));
  const pieces = new Map(renewing.map((part) => [part.part, part.perUnit.get(frame) ?? 1]));
  for (const { parts: codes } of series)
    for (const code of codes) if (!pieces.has(code)) pieces.set(code, perUnitOf(parts, code, frame));
  const named = new Set(series.flatMap((one) => one.parts));
  return {
    consumables: parts
      .filter((part) => !renewing.includes(part) && !named.has(part.part))
      .map((part) => ({ part: part.part, pieces: part.perUnit.get(frame) ?? 0 }))
      .filter((one) => one.pieces > 0),
    rotatingPart:
      rotating === undefined ? null : { part: rotating.part, pieces: rotating.perUnit.get(frame) ?? 1 },
    pieces,
  };
}

/** A part that only limits.csv names as renewing is fitted once a unit unless parts.csv gives its pieces. */
function perUnitOf(parts: readonly PartStock[], code: string, frame: string): number {
  const pieces = parts.find((part) => part.part === code)?.perUnit.get(frame) ?? 0;
  return pieces > 0 ? pieces : 1;
}

function missingParts(units: readonly PlanningUnit[], parts: readonly PartStock[]): readonly PartStock[] {
  const known = new Set(parts.map((part) => part.part));
  const named = new Set(units.flatMap((unit) => unit.series.flatMap((series) => series.partToFit ?? [])));
  return [...named]
    .filter((part) => !known.has(part))
    .sort()
    .map((part) => ({
      part,
      name: null,
      perUnit: new Map(units.filter((unit) => unit.pieces.has(part)).map((unit) => [unit.frame, 1])),
      resets: new Map(),
      leadTime_weeks: null,
      unitCost: null,
      currency: null,
      onHand: 0,
      onOrder: 0,
      due: null,
    }));
}

/** Why the wear of a group's series is not forecast, and which of several parts is counted, each said once. */
function seriesMessages(units: readonly PlanningUnit[]): readonly PlanMessage[] {
  const messages = new Map<string, PlanMessage>();
  for (const { plan, frame, series } of units) {
    for (const one of series) {
      const name = one.series.replaceAll('_', ' ');
      if (one.question.fit?.posterior == null) {
        const reason = one.question.fit?.row.reason ?? 'no reading of this series';
        messages.set(`${plan.unit.row.group} ${name}`, {
          about: 'group',
          name: plan.unit.row.group,
          text: `${name}: ${reason}; parts that it wears are not counted`,
        });
      }
      if (one.parts.length > 1) {
        messages.set(`${frame} ${name} parts`, {
          about: 'group',
          name: frame,
          text: `${name} is renewed by ${one.parts.join(' or ')}: ${one.partToFit} is counted`,
        });
      }
    }
  }
  return [...messages.values()];
}

function lifeMessages(units: readonly PlanningUnit[]): readonly PlanMessage[] {
  const frames = new Set(
    units
      .filter((unit) => unit.plan.unit.ratedLife_h !== null && unit.rotatingPart === null)
      .map((unit) => unit.frame),
  );
  return [...frames].map((name) => ({
    about: 'group',
    name,
    text: `no part in parts.csv renews ${rotatingSeries}, so none is counted when a unit’s rated life ends`,
  }));
}
