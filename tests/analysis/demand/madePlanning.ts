import type { GroupFit } from '../../../lib/analysis/groupFits';

import type { PartStock } from '../../../lib/analysis/plan/partStocks';
import type { Planning, PlanningUnit } from '../../../lib/analysis/plan/planning';
import type { SeriesPlan } from '../../../lib/analysis/plan/seriesPlans';
import type { UnitNow } from '../../../lib/analysis/unitNow';
import type { WearPosterior, WearStatistics } from '../../../lib/stats/wear/types';
import { oneNodePosterior } from '../../stats/wear/oneNodePosterior';

export const asOf = '2026-01-01';
/** 24 h a day: hours and days convert exactly. */
export const hoursPerYear = 24 * 365.25;

/** A posterior of one node: ratios, fixed effects and noise known as given. */
export function knownPosterior(known: {
  readonly beta: readonly [number, number];
  readonly sdNoise_mm: number;
  readonly ratios?: readonly [number, number, number, number];
  readonly inverse?: readonly [number, number, number];
  readonly degreesOfFreedom?: number;
}): WearPosterior {
  const { beta, sdNoise_mm, ratios = [0, 0, 0, 0], inverse = [0, 0, 0], degreesOfFreedom = 1e6 } = known;
  return oneNodePosterior({ ratios, beta, inverse, s2: sdNoise_mm ** 2, degreesOfFreedom, yCentre: 0 });
}

/** Fit of the one series of the one group; runs are named by their number, as the analysis names them. */
export function madeFit(
  statistics: WearStatistics,
  posterior: WearPosterior,
  series = 'thrust_play',
): GroupFit {
  return {
    row: {
      group: 'Crane',
      series,
      runs: statistics.runNames.length,
      units: statistics.unitNames.length,
      readings: statistics.readings,
      intercept_mm: null,
      slope_mm_per_10kh: null,
      sdNoise_mm: null,
      sdStart_mm: null,
      sdSlopeUnit_mm_per_10kh: null,
      sdSlopeRun_mm_per_10kh: null,
      remlCriterion: null,
      boundary: [],
      converged: true,
      observedRunHours: null,
      reason: null,
    },
    statistics,
    posterior,
    fit: null,
    unitIndex: new Map(statistics.unitNames.map((name, index) => [name, index])),
  };
}

export interface MadeUnit {
  readonly unit: string;
  readonly hoursNow: number | null;
  readonly hoursPerYear?: number | null;
  readonly interval_h?: number | null;
  readonly nextOverhaulDate?: string | null;
  readonly ratedLife_h?: number | null;
  readonly ratedLifeDate?: string | null;
  readonly lastHours?: number | null;
  readonly installed?: boolean;
  /** Number and unit hours at the start of the present run. */
  readonly run: number;
  readonly runStart_h: number;
}

/** State of a made-up unit of frame and group Crane. */
export function madeUnitNow(unit: MadeUnit): UnitNow {
  const { hoursNow, ratedLife_h = null } = unit;
  const perYear = unit.hoursPerYear === undefined ? hoursPerYear : unit.hoursPerYear;
  return {
    row: {
      unit: unit.unit,
      frame: 'Crane',
      group: 'Crane',
      site: null,
      engine: `E-${unit.unit}`,
      bank: null,
      hoursNow,
      hoursPerYear: perYear,
      hoursSource: 'plan',
      nextOverhaulDate: unit.nextOverhaulDate ?? null,
      plannedOverhauls: [],
      ratedLifeDate: unit.ratedLifeDate ?? null,
      lastOverhaulDate: null,
      lastWorkshop: null,
      overhauls: 2,
    },
    hoursNow,
    hoursPerYear: perYear,
    ratedLife_h,
    hoursAtNextOverhaul: null,
  };
}

export interface MadeSeries {
  readonly fit: GroupFit;
  readonly limit_mm: number;
  readonly side?: 'upper' | 'lower';
  readonly byPart: boolean;
  readonly part: string | null;
}

/** One part of frame Crane with stock. */
export function madePart(
  part: string,
  own: Partial<PartStock> & { readonly series?: readonly string[] } = {},
): PartStock {
  const { series = ['thrust_play'], ...rest } = own;
  return {
    part,
    name: null,
    perUnit: new Map([['Crane', 1]]),
    resets: new Map([['Crane', series]]),
    leadTime_weeks: 10,
    unitCost: 100,
    currency: 'EUR',
    onHand: 0,
    onOrder: 0,
    due: null,
    ...rest,
  };
}

/** A planning of made-up units that share their series. */
export function madePlanning(
  units: readonly MadeUnit[],
  series: readonly MadeSeries[],
  parts: readonly PartStock[],
  rotatingPart: string | null = null,
): Planning {
  const piecesOf = (part: PartStock) => part.perUnit.get('Crane') ?? 1;
  const renewing = parts.filter((part) => (part.resets.get('Crane') ?? []).length > 0);
  return {
    asOf,
    parts,
    messages: [],
    units: units.map((own): PlanningUnit => {
      const unit = madeUnitNow(own);
      const plan = {
        unit,
        installed: own.installed ?? true,
        interval_h: own.interval_h === undefined ? 6_000 : own.interval_h,
        lastHours: own.lastHours ?? null,
      };
      return {
        plan,
        frame: 'Crane',
        series: series.map((one) => seriesPlan(own, unit, one)),
        consumables: parts
          .filter((part) => !renewing.includes(part))
          .map((part) => ({ part: part.part, pieces: piecesOf(part) })),
        rotatingPart: rotatingPart === null ? null : { part: rotatingPart, pieces: 1 },
        pieces: new Map(renewing.map((part) => [part.part, piecesOf(part)])),
      };
    }),
  };
}

function seriesPlan(
  own: MadeUnit,
  unit: UnitNow,
  { fit, limit_mm, side = 'upper', byPart, part }: MadeSeries,
): SeriesPlan {
  const { series } = fit.row;
  const limit = { frame: 'Crane', series, limit_kind: side, limit_mm, source: null };
  const run = { run: own.run, start_hours: own.runStart_h };
  return {
    series,
    question: { unit, series, fit, run, limit, asOf, quarters: [] },
    characteristic: series,
    parts: part === null ? [] : [part],
    byPart,
    side,
    limit_mm,
    partToFit: part,
  };
}
