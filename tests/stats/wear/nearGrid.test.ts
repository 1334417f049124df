import { describe, expect, it } from 'vitest';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import { modeRanges } from '../../../lib/stats/wear/modeRanges';
import { nearGrid } from '../../../lib/stats/wear/nearGrid';
import { NODE, nodeGrid } from '../../../lib/stats/wear/nodeGrid';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { manyUnits } from './manyUnits';

const fleets = [
  { name: 'all spreads well known', readings: manyUnits(1, 0.02, 0.02) },
  { name: 'no spread of slopes', readings: manyUnits(2, 0, 0.015) },
  { name: 'no spread at all', readings: manyUnits(3, 0, 0) },
];

describe.each(fleets)('nodes near the weight, 60 units, $name', ({ readings }) => {
  const workspace = wearWorkspace(wearStatistics(readings));
  const ranges = modeRanges(workspace, 7, false);
  const all = nodeGrid(workspace, ranges);
  const near = nearGrid(workspace, ranges);
  const looked = Array.from(near.weights.keys()).filter((node) => Number.isFinite(near.nodes[NODE * node]));

  it('leaves nodes out that carry under 1 in 300 of the weight together', () => {
    expect(near.computed).toBe(looked.length);
    expect(near.computed).toBeLessThan(all.computed);
    const met = looked.reduce((sum, node) => sum + (all.weights[node] as number), 0);
    expect(1 - met).toBeLessThan(1 / 300);
  });

  it('computes the others as they are computed one after another', () => {
    for (const node of looked)
      expect(near.nodes.subarray(NODE * node, NODE * (node + 1))).toEqual(
        all.nodes.subarray(NODE * node, NODE * (node + 1)),
      );
  });
});
