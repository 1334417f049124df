import { describe, expect, it } from 'vitest';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import { fitWear } from '../../../lib/stats/wear/fitWear';
import { chancePast, levelQuantile } from '../../../lib/stats/wear/forecast';
import { forLevels, gatherNodes } from '../../../lib/stats/wear/gatherNodes';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { NODE } from '../../../lib/stats/wear/nodeGrid';
import { placeNodes } from '../../../lib/stats/wear/placeNodes';
import { RATIO_NODE } from '../../../lib/stats/wear/ratioNodes';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { manyUnits } from './manyUnits';
import { oneNodePosterior } from './oneNodePosterior';

const fleets = [
  { name: 'all spreads well known', statistics: wearStatistics(manyUnits(1, 0.02, 0.02)) },
  { name: 'no spread of slopes', statistics: wearStatistics(manyUnits(2, 0, 0.015)) },
  { name: 'no spread at all', statistics: wearStatistics(manyUnits(3, 0, 0)) },
];

describe.each(fleets)('60 units, $name', ({ statistics }) => {
  const workspace = wearWorkspace(statistics);
  const { grid } = placeNodes(workspace);
  const gathered = gatherNodes(workspace, grid);
  /** Total of run and unit on the scale that is linear up to `small` and logarithmic beyond. */
  const totalOf = (ratios: Float64Array, node: number, axis: number) => {
    const [run = 0, unit = 0] = [ratios[RATIO_NODE * node + axis], ratios[RATIO_NODE * node + axis + 2]];
    return Math.asinh(Math.sqrt(run + unit) / forLevels.small);
  };

  it('keeps the whole weight and the mean of both totals, and loses no more of their spread than it may', () => {
    expect(gathered.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    let lost = 0;
    for (const axis of [0, 1]) {
      const moments = ({ ratios, weights }: { ratios: Float64Array; weights: Float64Array }) =>
        weights.reduce(
          ([one, two], weight, node) => {
            const position = totalOf(ratios, node, axis);
            return [one + weight * position, two + weight * position * position] as const;
          },
          [0, 0] as readonly [number, number],
        );
      const [before, after] = [moments(grid), moments(gathered)];
      expect(after[0]).toBeCloseTo(before[0], 9);
      lost += before[1] - after[1];
    }
    expect(lost).toBeGreaterThan(-1e-9);
    expect(lost).toBeLessThanOrEqual(forLevels.lostSpread + 1e-9);
    expect(gathered.weights.length).toBeLessThan(grid.weights.length / 5);
  });

  it('moves no chance by more than 0.003 from that over all nodes, each computed by itself', () => {
    const posterior = integrateWear(statistics);
    const degreesOfFreedom = statistics.readings - 4;
    const all = Array.from(grid.weights.entries()).filter(([, weight]) => weight > 1e-6);
    const total = all.reduce((sum, [, weight]) => sum + weight, 0);
    for (const unit of [0, 31]) {
      const run = (statistics.firstRun[unit + 1] as number) - 1;
      const ours = runLevel(posterior, statistics, unit, run);
      const lines = all.map(([node, weight]) => {
        const ratio = (axis: number) => Math.sqrt(grid.ratios[RATIO_NODE * node + axis] as number);
        const [, beta0 = 0, beta1 = 0, i00 = 0, i01 = 0, i11 = 0, squares = 0] = grid.nodes.subarray(
          NODE * node,
        );
        const one = oneNodePosterior({
          ratios: [ratio(0), ratio(1), ratio(2), ratio(3)],
          beta: [beta0, beta1],
          inverse: [i00, i01, i11],
          s2: squares / degreesOfFreedom,
          degreesOfFreedom,
          yCentre: statistics.yCentre,
        });
        return { weight: weight / total, line: runLevel(one, statistics, unit, run) };
      });
      for (const x of [0.5, 2]) {
        for (const below of [0.1, 0.5, 0.9]) {
          const limit = levelQuantile(ours, x, below);
          const chance = lines.reduce(
            (sum, { weight, line }) => sum + weight * chancePast(line, limit, 'lower', x),
            0,
          );
          expect(Math.abs(chance - below)).toBeLessThan(0.003);
        }
      }
    }
  });
});

it.each(fleets)('is the same from the ratios of the fit as without them, $name', ({ statistics }) => {
  const without = integrateWear(statistics);
  const fitted = integrateWear(statistics, { fitted: fitWear(statistics).ratios });
  const run = (statistics.firstRun[1] as number) - 1;
  for (const below of [0.05, 0.5, 0.95]) {
    const limit = levelQuantile(runLevel(without, statistics, 0, run), 1.5, below);
    expect(chancePast(runLevel(fitted, statistics, 0, run), limit, 'lower', 1.5)).toBeCloseTo(below, 4);
  }
});
