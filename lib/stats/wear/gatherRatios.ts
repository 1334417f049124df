import { gatherCells } from './gatherCells';
import { mergedRatio, mergeScale } from './mergeScale';

/** Nodes put into few: what each weighs, and its four ratios, one after another. */
export interface GatheredRatios {
  readonly weights: Float64Array;
  readonly ratios: Float64Array;
}

/** How nodes are put together. */
export interface Gathering {
  /** Totals of run and unit up to about this size hardly matter, whatever their relative size. */
  readonly small: number;
  /** Spread that may be lost inside the cells: variance of the positions, summed over the four. */
  readonly lostSpread: number;
}

/** Below so many times the size that hardly matters it hardly matters either how a total is shared by run and unit. */
const SHARED = 1.5;

/**
 * Puts weighted nodes into few cells, each of which becomes one node at its weighted mean position.
 *
 * A forecast hangs on the total spread of the starts and of the slopes, and on how run and unit share each: totals are taken on
 * the merging scale, shares as the angle of unit against run, which counts the less the smaller the total is. Taken one by one,
 * four ratios that are all near zero would want ten times as many nodes for forecasts that hardly differ.
 *
 * @param weights of the nodes, summing to 1
 * @param ratios four numbers a node: start and slope of the run, start and slope of the unit
 */
export function gatherRatios(
  weights: Float64Array,
  ratios: Float64Array,
  { small, lostSpread }: Gathering,
): GatheredRatios {
  const turn = (total: number) => total / Math.hypot(total, SHARED * small);
  const positions = new Float64Array(ratios.length);
  for (let p = 0; p < ratios.length; p += 4)
    for (let j = p; j < p + 2; j++) {
      const [run, unit] = [ratios[j] as number, ratios[j + 2] as number];
      const total = Math.hypot(run, unit);
      positions[j] = mergeScale(total, small);
      positions[j + 2] = Math.atan2(unit, run) * turn(total);
    }
  const cells = gatherCells(weights, positions, lostSpread);
  const gathered = new Float64Array(cells.means.length);
  for (let p = 0; p < gathered.length; p += 4)
    for (let j = p; j < p + 2; j++) {
      const total = mergedRatio(cells.means[j] as number, small);
      const angle = total > 0 ? Math.min(Math.PI / 2, (cells.means[j + 2] as number) / turn(total)) : 0;
      gathered[j] = total * Math.cos(angle);
      gathered[j + 2] = total * Math.sin(angle);
    }
  return { weights: cells.weights, ratios: gathered };
}
