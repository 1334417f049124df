import { type AngleRange, rangeAngles } from './angleRange';

/** Numbers a node: squared ratios start run, slope run, start unit, slope unit, then the log prior. */
export const RATIO_NODE = 5;

/** Run's and unit's squared ratio with the log prior, for every pair of nodes on two axes. */
interface PairTable {
  readonly run: Float64Array;
  readonly unit: Float64Array;
  readonly logPrior: Float64Array;
}

/**
 * Squared ratios and log prior at every combination of four axes: first of start, first of slope, second of
 * start, second of slope, the last varying fastest.
 *
 * Half-Cauchy(1) on each ratio, density proportional to 1 / (1 + ratio squared), times the change of variables
 * from the ratios to the angles; a constant is left out.
 */
export function ratioNodes(ranges: readonly AngleRange[]): Float64Array {
  const [startFirst, slopeFirst, startSecond, slopeSecond] = ranges as [
    AngleRange,
    AngleRange,
    AngleRange,
    AngleRange,
  ];
  const start = pairTable(startFirst, startSecond);
  const slope = pairTable(slopeFirst, slopeSecond);
  const [a, v, w, u] = ranges.map((range) => range.count) as [number, number, number, number];
  const nodes = new Float64Array(RATIO_NODE * a * v * w * u);
  let p = 0;
  for (let i = 0; i < a; i++) {
    for (let k = 0; k < v; k++) {
      for (let j = i * w; j < (i + 1) * w; j++) {
        for (let l = k * u; l < (k + 1) * u; l++) {
          nodes[p] = start.run[j] as number;
          nodes[p + 1] = slope.run[l] as number;
          nodes[p + 2] = start.unit[j] as number;
          nodes[p + 3] = slope.unit[l] as number;
          nodes[p + 4] = (start.logPrior[j] as number) + (slope.logPrior[l] as number);
          p += RATIO_NODE;
        }
      }
    }
  }
  return nodes;
}

function pairTable(first: AngleRange, second: AngleRange): PairTable {
  const size = first.count * second.count;
  const table = {
    run: new Float64Array(size),
    unit: new Float64Array(size),
    logPrior: new Float64Array(size),
  };
  const fill = second.kind === 'share' ? fillShared : fillSeparate;
  let p = 0;
  for (const one of rangeAngles(first)) {
    const tangent = Math.tan(one);
    for (const other of rangeAngles(second)) fill(table, p++, first.scale, tangent, second.scale, other);
  }
  return table;
}

function fillSeparate(
  table: PairTable,
  p: number,
  scale: number,
  t: number,
  scaleUnit: number,
  angle: number,
): void {
  const tUnit = Math.tan(angle);
  const run = (scale * t) ** 2;
  const unit = (scaleUnit * tUnit) ** 2;
  table.run[p] = run;
  table.unit[p] = unit;
  table.logPrior[p] = Math.log1p(t * t) - Math.log1p(run) + Math.log1p(tUnit * tUnit) - Math.log1p(unit);
}

/**
 * Total T and share: run = T cos(omega), unit = T sin(omega).
 *
 * Given T the prior of omega has distribution function atan(k tan omega) + atan(tan omega / k), k squared =
 * 1 + T squared, over pi; angle / 90 degrees is that probability, so tan(2 omega) = 2 tan(2 angle) / (k + 1 / k).
 * The prior of T is proportional to T / ((2 + T squared) k).
 */
function fillShared(table: PairTable, p: number, scale: number, t: number, _: number, angle: number): void {
  const squared = (scale * t) ** 2;
  const k = Math.sqrt(1 + squared);
  const doubled = Math.atan2(2 * Math.sin(2 * angle), (k + 1 / k) * Math.cos(2 * angle));
  const unit = (squared * (1 - Math.cos(doubled))) / 2;
  table.run[p] = squared - unit;
  table.unit[p] = unit;
  table.logPrior[p] = Math.log(t) + Math.log1p(t * t) - Math.log(2 + squared) - Math.log(k);
}
