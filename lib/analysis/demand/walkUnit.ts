import { type DrawnSeries, type DrawnUnit, nextRuns } from './drawnFleet';
import { begin, callsForPart, isPast, leave, type PartRun, partRun } from './partRun';

/** Overhauls that a unit is carried through. */
export interface WalkPlan {
  /** Unit hours at each overhaul, and at the one after it (NaN if none is planned). */
  readonly hours: Float64Array;
  readonly following: Float64Array;
  /** Chance of passing a limit before the following overhaul above which a part is replaced. */
  readonly acceptedRisk: number;
  /** Where the unit starts: in the runs that it is in, or at 0 h with every series new. */
  readonly from: 'now' | 'new';
}

/** What a walk through the overhauls brought. */
export interface Walk {
  /** Parts that the unit can call for. */
  readonly parts: readonly string[];
  /** At overhaul j, part p (at j x parts + p): 1 for each draw in which it is fitted; null if in none. */
  readonly fitted: readonly (Uint8Array | null)[];
  /** Draws in which a limit is passed in service before overhaul j. */
  readonly exceeded: Int32Array;
}

interface Sheet {
  readonly parts: readonly string[];
  readonly draws: number;
  readonly fitted: (Uint8Array | null)[];
  /** Overhaul j, draw d at j x draws + d: 1 where a limit is passed before the overhaul. */
  readonly past: Uint8Array;
}

/**
 * Carries a unit through its overhauls in the first so many of its draws.
 *
 * At each overhaul a reading as found is drawn (level + noise) and what is believed of the run is updated by it. A part-reset
 * series calls for its part if the chance of being past its limit at the overhaul or by the following one then exceeds
 * the accepted risk; the part renews every series that it resets. An assembly-reset series starts a new run at every overhaul
 * and calls for its part, if it has one, where its level is past the limit. The reading as left is learnt from too.
 * The end of the rated life calls for the rotating part at the last overhaul before it.
 */
export function walkUnit({ unit, series }: DrawnUnit, draws: number, plan: WalkPlan): Walk {
  const rotating = unit.rotatingPart === null ? [] : [unit.rotatingPart.part];
  const parts = [...new Set([...series.flatMap((one) => one.plan.partToFit ?? []), ...rotating])];
  const overhauls = plan.hours.length;
  const fitted = Array.from({ length: overhauls * parts.length }, (): Uint8Array | null => null);
  const sheet: Sheet = { parts, draws, fitted, past: new Uint8Array(overhauls * draws) };
  if (rotating[0] !== undefined)
    fitForRatedLife(sheet, parts.indexOf(rotating[0]), unit.plan.unit.ratedLife_h, plan);
  const byPart: PartRun[] = [];
  for (const one of series) {
    if (one.plan.byPart) byPart.push(partRun(one, parts, plan.acceptedRisk));
    else walkAssemblyReset(one, sheet, plan);
  }
  if (byPart.length > 0) walkPartReset(byPart, sheet, plan);
  const exceeded = new Int32Array(overhauls);
  for (let at = 0; at < sheet.past.length; at++) {
    const j = Math.floor(at / draws);
    exceeded[j] = (exceeded[j] as number) + (sheet.past[at] as number);
  }
  return { parts, fitted, exceeded };
}

function fittedAt({ fitted, parts, draws }: Sheet, j: number, part: number): Uint8Array {
  const at = j * parts.length + part;
  const known = fitted[at] ?? new Uint8Array(draws);
  fitted[at] = known;
  return known;
}

/** The same in every draw: the rated life must not end before the following overhaul. */
function fitForRatedLife(
  sheet: Sheet,
  part: number,
  ratedLife_h: number | null,
  { hours, following }: WalkPlan,
): void {
  if (ratedLife_h === null) return;
  let end_h = ratedLife_h;
  hours.forEach((h, j) => {
    if (!(h >= end_h || (following[j] as number) > end_h)) return;
    fittedAt(sheet, j, part).fill(1);
    end_h = h + ratedLife_h;
  });
}

/** Its runs are those between overhauls, the same in every draw. */
function walkAssemblyReset(
  { plan: rule, crossing, count, runStart_h }: DrawnSeries,
  sheet: Sheet,
  { hours, from }: WalkPlan,
): void {
  const { draws, past, parts } = sheet;
  const part = rule.partToFit === null ? -1 : parts.indexOf(rule.partToFit);
  let run = from === 'now' ? 0 : 1;
  let start_h = from === 'now' ? runStart_h : 0;
  for (let j = 0; j < hours.length; j++) {
    const x = ((hours[j] as number) - start_h) / 10_000;
    for (let draw = 0; draw < draws; draw++) {
      if ((crossing[run * count + draw] as number) > x) continue;
      past[j * draws + draw] = 1;
      if (part >= 0) fittedAt(sheet, j, part)[draw] = 1;
    }
    run = (run % nextRuns) + 1;
    start_h = hours[j] as number;
  }
}

/** Series that run on until a part is fitted, together, since a part may renew several of them. */
function walkPartReset(states: readonly PartRun[], sheet: Sheet, { hours, following, from }: WalkPlan): void {
  const { draws, past } = sheet;
  for (let draw = 0; draw < draws; draw++) {
    for (const state of states) begin(state, from);
    for (let j = 0; j < hours.length; j++) {
      const h = hours[j] as number;
      for (const state of states) {
        if (isPast(state, draw, h)) past[j * draws + draw] = 1;
        state.called = callsForPart(state, draw, h, following[j] as number);
        if (state.called && state.part >= 0) fittedAt(sheet, j, state.part)[draw] = 1;
      }
      for (const state of states) leave(state, draw, h, state.called || isRenewed(state, sheet, j, draw));
    }
  }
}

function isRenewed({ renewedBy }: PartRun, { fitted, parts }: Sheet, j: number, draw: number): boolean {
  for (let part = 0; part < renewedBy.length; part++) {
    if (renewedBy[part] && fitted[j * parts.length + part]?.[draw] === 1) return true;
  }
  return false;
}
