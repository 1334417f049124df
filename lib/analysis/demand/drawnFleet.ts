import { drawGroup, type GroupDraws } from '../../stats/draws/groupDraws';
import { hash32 } from '../../stats/draws/hash32';
import { type LineBelief, lineBelief, mirrored } from '../../stats/draws/lineBelief';
import { seededStream } from '../../stats/draws/seededStream';
import { drawUnit, type UnitDraws } from '../../stats/draws/unitDraws';
import { runLevel } from '../../stats/wear/runLevel';
import type { StudentTable } from '../../stats/wear/types';
import { currentRun } from '../currentLine';
import { type GroupFit, groupKey } from '../groupFits';
import type { Planning, PlanningUnit } from '../plan/planning';
import type { SeriesPlan } from '../plan/seriesPlans';

/** Next runs drawn for a unit; a unit that starts more of them takes these again in turn. */
export const nextRuns = 3;

/** The draws of one series of a unit, mirrored for a lower limit so that every limit is an upper one. */
export interface DrawnSeries {
  readonly plan: SeriesPlan;
  readonly limit_mm: number;
  /** Unit hours at which the present run started. */
  readonly runStart_h: number;
  /** Run k, draw d at k x draws + d: run hours / 10,000 at which the level meets the limit; infinite if never. */
  readonly crossing: Float32Array;
  /** Draws of each run. */
  readonly count: number;
  /** The lines themselves, kept where decisions about a part follow the readings; empty for an assembly-reset series. */
  readonly lines: UnitDraws;
  readonly sdNoise_mm: Float64Array;
  /** What is known of the present run and of a new one before the readings to come; null where no part follows the readings. */
  readonly believed: { readonly current: LineBelief; readonly next: LineBelief } | null;
  readonly table: StudentTable;
  /** Seed of the noise of the readings to come. */
  readonly noiseSeed: number;
}

const none = new Float32Array(0);
const noLines: UnitDraws = { count: 0, runs: 0, start_mm: none, slope_mm_per_10kh: none };

/** A unit with its draws; series without a forecast are left out. */
export interface DrawnUnit {
  readonly unit: PlanningUnit;
  readonly series: readonly DrawnSeries[];
}

/** The fleet with its draws: made once, then any plan is walked through them. */
export interface DrawnFleet {
  readonly planning: Planning;
  readonly seed: number;
  readonly draws: number;
  readonly units: readonly DrawnUnit[];
}

/** Draws that keep large fleets within memory and time: 1,000 up to 250 units, 400 up to 1,000, fewer beyond. */
export function defaultDraws(units: number): number {
  if (units <= 250) return 1_000;
  return units <= 1_000 ? 400 : Math.max(100, Math.floor(400_000 / units));
}

/**
 * Draws every unit's present and next runs from the integrated posterior.
 *
 * Units of a group share ratios, noise and fixed effects in each draw. Series of one characteristic share their random numbers,
 * since they are made from the same readings; characteristics are independent. The same seed gives the same draws.
 */
export function drawFleet(
  planning: Planning,
  options: { readonly seed?: number; readonly draws?: number } = {},
): DrawnFleet {
  const { seed = 1, draws = defaultDraws(planning.units.length) } = options;
  const groups = new Map<string, GroupDraws>();
  const units = planning.units.map((unit) => ({
    unit,
    series: unit.series.flatMap((plan) => drawSeries(plan, seed, draws, groups) ?? []),
  }));
  return { planning, seed, draws, units };
}

function drawSeries(
  plan: SeriesPlan,
  seed: number,
  draws: number,
  groups: Map<string, GroupDraws>,
): DrawnSeries | null {
  const { question, characteristic } = plan;
  const { fit } = question;
  const current = currentRun(question);
  if ('reason' in current || fit === null) return null;
  const { posterior, statistics, unit, run, start_h } = current;
  const shared = groupDraws(fit, characteristic, seed, draws, groups);
  const name = `${question.unit.row.unit}/${characteristic}`;
  const drawn = drawUnit(posterior, statistics, shared, { unit, run, nextRuns }, seededStream(seed, name));
  const sign = plan.side === 'upper' ? 1 : -1;
  const lines =
    sign === 1
      ? drawn
      : {
          ...drawn,
          start_mm: drawn.start_mm.map((y) => -y),
          slope_mm_per_10kh: drawn.slope_mm_per_10kh.map((y) => -y),
        };
  const belief = (ofRun: number | null) => {
    const believed = lineBelief(runLevel(posterior, statistics, unit, ofRun));
    return sign === 1 ? believed : mirrored(believed);
  };
  return {
    plan,
    limit_mm: sign * plan.limit_mm,
    runStart_h: start_h,
    crossing: crossingsOf(lines, sign * plan.limit_mm),
    count: draws,
    lines: plan.byPart ? lines : noLines,
    sdNoise_mm: shared.sdNoise_mm,
    believed: plan.byPart ? { current: belief(run), next: belief(null) } : null,
    table: posterior.table,
    noiseSeed: hash32(`${seed}/${name}/readings`),
  };
}

function groupDraws(
  fit: GroupFit,
  characteristic: string,
  seed: number,
  draws: number,
  groups: Map<string, GroupDraws>,
): GroupDraws {
  const key = groupKey(fit.row.group, fit.row.series);
  const known = groups.get(key);
  if (known !== undefined) return known;
  if (fit.posterior === null)
    throw new Error(`drawFleet requires a fit of ${fit.row.group} ${fit.row.series}`);
  const made = drawGroup(fit.posterior, seededStream(seed, `${fit.row.group}/${characteristic}`), draws);
  groups.set(key, made);
  return made;
}

/** Run hours / 10,000 at which each drawn line meets the limit: 0 if it starts past it, infinite if it never does. */
function crossingsOf({ start_mm, slope_mm_per_10kh }: UnitDraws, limit_mm: number): Float32Array {
  return start_mm.map((start, k) => {
    if (start >= limit_mm) return 0;
    const slope = slope_mm_per_10kh[k] as number;
    return slope > 0 ? (limit_mm - start) / slope : Number.POSITIVE_INFINITY;
  });
}
