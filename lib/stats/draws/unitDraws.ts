import { runSums } from '../wear/runLevel';
import type { WearPosterior, WearStatistics } from '../wear/types';
import { SUMS, unitSums } from '../wear/unitSums';
import type { GroupDraws } from './groupDraws';
import { fillFactor, type LineFactor, lineFactor, type MemberSums, noSums } from './lineFactor';
import type { SeededStream } from './seededStream';

/** Lines of one unit in every draw: its current run first, then its next runs; run k, draw d is at k x count + d. */
export interface UnitDraws {
  readonly count: number;
  readonly runs: number;
  /** Level at the start of the run, mm. */
  readonly start_mm: Float32Array;
  /** Wear rate, mm per 10,000 h. */
  readonly slope_mm_per_10kh: Float32Array;
}

/**
 * Draws a unit's current run and its next runs, given what its group shares in each draw.
 *
 * Unit line given beta, current run given the unit line and its readings, next runs given the unit line: each normal, with
 * the noise variance of the draw. unit null stands for a unit not seen, run null for a current run without readings.
 */
export function drawUnit(
  posterior: WearPosterior,
  statistics: WearStatistics,
  group: GroupDraws,
  place: { readonly unit: number | null; readonly run: number | null; readonly nextRuns: number },
  stream: SeededStream,
): UnitDraws {
  const { count } = group;
  const runs = 1 + place.nextRuns;
  const width = 2 * (1 + runs);
  const normals = new Float64Array(width * count);
  stream.normals(normals);
  const start_mm = new Float32Array(runs * count);
  const slope_mm_per_10kh = new Float32Array(runs * count);
  const sums = unitSums(posterior, statistics, place.unit);
  const { n, sx, sxx, sy, sxy } = runSums(posterior, statistics, place.run);
  const ofRun: MemberSums = { s00: n, s01: sx, s11: sxx, r0: sy, r1: sxy };
  const [unit, current, next] = [lineFactor(), lineFactor(), lineFactor()];
  let done = -1;
  for (const draw of group.byNode) {
    const node = group.node[draw] as number;
    if (node !== done) {
      done = node;
      fillFactor(
        unit,
        ratio2(posterior.startUnit, node),
        ratio2(posterior.slopeUnit, node),
        pairSums(posterior, sums, node),
      );
      fillFactor(current, ratio2(posterior.startRun, node), ratio2(posterior.slopeRun, node), ofRun);
      fillFactor(next, ratio2(posterior.startRun, node), ratio2(posterior.slopeRun, node), noSums);
    }
    const sd = group.sdNoise_mm[draw] as number;
    const p = width * draw;
    const [b0, b1] = [group.beta0[draw] as number, group.beta1[draw] as number];
    const start = memberStart(unit, b0, b1) + sd * unit.root00 * (normals[p] as number);
    const slope =
      memberSlope(unit, b0, b1) +
      sd * (unit.root10 * (normals[p] as number) + unit.root11 * (normals[p + 1] as number));
    for (let run = 0; run < runs; run++) {
      const factor = run === 0 ? current : next;
      const z0 = normals[p + 2 + 2 * run] as number;
      const z1 = normals[p + 3 + 2 * run] as number;
      const at = run * count + draw;
      start_mm[at] = posterior.yCentre + memberStart(factor, start, slope) + sd * factor.root00 * z0;
      slope_mm_per_10kh[at] =
        memberSlope(factor, start, slope) + sd * (factor.root10 * z0 + factor.root11 * z1);
    }
  }
  return { count, runs, start_mm, slope_mm_per_10kh };
}

function ratio2(ratios: Float64Array, node: number): number {
  return (ratios[node] as number) ** 2;
}

function pairSums(posterior: WearPosterior, sums: Float64Array, node: number): MemberSums {
  const p = SUMS * (posterior.runPair[node] as number);
  const [s00, s01, s11, r0, r1] = sums.subarray(p, p + SUMS) as unknown as [
    number,
    number,
    number,
    number,
    number,
  ];
  return { s00, s01, s11, r0, r1 };
}

function memberStart(factor: LineFactor, start: number, slope: number): number {
  return factor.offset0 + factor.map00 * start + factor.map01 * slope;
}

function memberSlope(factor: LineFactor, start: number, slope: number): number {
  return factor.offset1 + factor.map10 * start + factor.map11 * slope;
}
