import { expect, test } from 'vitest';
import { KnownRuns } from '../../../lib/stats/residuals/KnownRuns';
import { nodeBase } from '../../../lib/stats/residuals/NodeBase';
import { type ReadingNodes, readingNodes } from '../../../lib/stats/residuals/readingNodes';
import { readingScore } from '../../../lib/stats/residuals/readingScore';
import { takenReadings } from '../../../lib/stats/residuals/TakenReadings';
import { UnitAtNodes } from '../../../lib/stats/residuals/UnitAtNodes';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { studentTable } from '../../../lib/stats/wear/studentTable';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { manyUnits } from '../wear/manyUnits';

const readings = manyUnits(4, 0.001, 0.001);
const statistics = wearStatistics(readings);
const posterior = integrateWear(statistics);

/** z of every reading of a unit, each foretold from those before it and all of the other units. */
function scores(nodes: ReadingNodes, unit: number): readonly number[] {
  const { taken } = takenReadings(statistics, readings);
  const runs = new KnownRuns(statistics, taken);
  const atNodes = new UnitAtNodes(nodeBase(nodes, statistics));
  runs.begin(unit);
  const [from, to] = [statistics.firstRun[unit] as number, statistics.firstRun[unit + 1] as number];
  atNodes.begin(wearWorkspace(statistics).runs, from, to);
  const first = taken.firstReading[unit] as number;
  const own = (taken.firstReading[unit + 1] as number) - first;
  return Array.from({ length: own }, (_, k) => {
    const x = taken.x[first + k] as number;
    atNodes.foretell(runs, runs.runOf(first + k), x, studentTable(readings.length - own + k - 4));
    const { z } = readingScore(atNodes.level.line, x, taken.y[first + k] as number);
    runs.take();
    atNodes.follow(runs);
    return z;
  });
}

test('readings are foretold from under half of the nodes with z within 0.02 of those from all, where spreads are a tenth of the noise', () => {
  const few = readingNodes(posterior);
  expect(posterior.weight.length).toBeGreaterThan(25);
  expect(few.weight.length).toBeLessThan(posterior.weight.length / 2);
  expect(few.weight.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
  for (const unit of [0, 17, 44]) {
    const all = scores(posterior, unit);
    for (const [k, z] of scores(few, unit).entries())
      expect(Math.abs(z - (all[k] as number))).toBeLessThan(0.02);
  }
});

test('a posterior of few nodes keeps them', () => {
  const known = integrateWear(wearStatistics(manyUnits(5, 0.02, 0.02)));
  expect(known.weight.length).toBeLessThan(25);
  expect(readingNodes(known).weight).toEqual(known.weight);
});
