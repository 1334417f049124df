import { mixed } from '../../stats/draws/hash32';
import { copyBelief, type LineBelief, learn, levelSquare } from '../../stats/draws/lineBelief';
import { normalFrom, normalTable } from '../../stats/draws/normalTable';
import { studentQuantile } from '../../stats/wear/studentTable';
import { type DrawnSeries, nextRuns } from './drawnFleet';

/** A part-reset series of one draw on its way through the overhauls: the run that it is in and what is believed of it. */
export interface PartRun {
  readonly series: DrawnSeries;
  /** What is known of the run that the unit is in and of a new one, before any reading is drawn. */
  readonly current: LineBelief;
  readonly next: LineBelief;
  /** Place among the walk's parts of the part that it calls for; -1 if none is known. */
  readonly part: number;
  /** For each of the walk's parts whether it renews the series. */
  readonly renewedBy: readonly boolean[];
  /** Quantile of Student's t at 1 - accepted risk. */
  readonly quantile: number;
  readonly normals: Float64Array;
  readonly belief: LineBelief;
  run: number;
  start_h: number;
  /** Readings drawn in the run. */
  readings: number;
  called: boolean;
}

/**
 * Makes the run of a series to be begun in each draw.
 *
 * @throws Error if the series does not run on until its part is fitted
 */
export function partRun(series: DrawnSeries, parts: readonly string[], acceptedRisk: number): PartRun {
  const { plan, table, believed } = series;
  if (believed === null)
    throw new Error(`partRun requires a series that a part resets, got ${plan.question.series}`);
  const { current, next } = believed;
  return {
    series,
    current,
    next,
    part: plan.partToFit === null ? -1 : parts.indexOf(plan.partToFit),
    renewedBy: parts.map((part) => plan.parts.includes(part)),
    quantile: studentQuantile(table, 1 - acceptedRisk),
    normals: normalTable(),
    belief: { ...current },
    run: 0,
    start_h: 0,
    readings: 0,
    called: false,
  };
}

/** Starts a draw in the run that the unit is in, or in a new one at 0 h. */
export function begin(state: PartRun, from: 'now' | 'new'): void {
  copyBelief(state.belief, from === 'now' ? state.current : state.next);
  state.run = from === 'now' ? 0 : 1;
  state.start_h = from === 'now' ? state.series.runStart_h : 0;
  state.readings = 0;
}

/** Whether the drawn level is past the limit at the given unit hours. */
export function isPast({ series, run, start_h }: PartRun, draw: number, h: number): boolean {
  return (series.crossing[run * series.count + draw] as number) <= (h - start_h) / 10_000;
}

/** A reading of the run in this draw: its noise belongs to run and number, so that it does not change with the plan. */
function reading(state: PartRun, draw: number, x: number): number {
  const { series, run } = state;
  const at = run * series.count + draw;
  const bits = mixed(mixed(series.noiseSeed, draw), 64 * run + state.readings);
  state.readings += 1;
  const level = (series.lines.start_mm[at] as number) + (series.lines.slope_mm_per_10kh[at] as number) * x;
  return level + (series.sdNoise_mm[draw] as number) * normalFrom(state.normals, bits);
}

/**
 * Takes the reading as found and tells whether the part is called for: the chance of being past the limit now, or by the
 * following overhaul (NaN if none is planned), exceeds the accepted risk.
 */
export function callsForPart(state: PartRun, draw: number, h: number, next: number): boolean {
  const { belief, start_h } = state;
  const x = (h - start_h) / 10_000;
  learn(belief, x, reading(state, draw, x));
  return quantilePast(state, x) || (next > h && quantilePast(state, (next - start_h) / 10_000));
}

/** The chance of being past exceeds the accepted risk where the level's quantile at 1 - risk lies past the limit. */
function quantilePast({ belief, quantile, series }: PartRun, x: number): boolean {
  return belief.start + belief.slope * x + quantile * Math.sqrt(levelSquare(belief, x)) > series.limit_mm;
}

/** Ends the overhaul: a renewed series starts its next run, and the reading as left is learnt from. */
export function leave(state: PartRun, draw: number, h: number, renewed: boolean): void {
  if (renewed) {
    state.run = (state.run % nextRuns) + 1;
    state.start_h = h;
    state.readings = 0;
    copyBelief(state.belief, state.next);
  }
  const x = (h - state.start_h) / 10_000;
  learn(state.belief, x, reading(state, draw, x));
}
