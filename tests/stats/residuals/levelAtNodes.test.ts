import fc from 'fast-check';
import { expect, test } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { KnownRuns } from '../../../lib/stats/residuals/KnownRuns';
import { nodeBase } from '../../../lib/stats/residuals/NodeBase';
import { takenReadings } from '../../../lib/stats/residuals/TakenReadings';
import { UnitAtNodes } from '../../../lib/stats/residuals/UnitAtNodes';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { evaluateNodes, NODE } from '../../../lib/stats/wear/nodeGrid';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import { studentTable } from '../../../lib/stats/wear/studentTable';
import type { WearPosterior, WearReading, WearStatistics } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';

const truth = { noise: 0.012, startRun: 0.015, slopeRun: 0.015, startUnit: 0.01, slopeUnit: 0.02 };

/** Log likelihood, fixed effects and residual squares of some readings at every node, by absorbing all of their runs. */
function nodesOf(posterior: WearPosterior, statistics: WearStatistics): Float64Array {
  const { startRun, slopeRun, startUnit, slopeUnit } = posterior;
  const ratios = [...startRun].flatMap((_, node) => [
    ...[startRun, slopeRun, startUnit, slopeUnit].map((column) => (column[node] as number) ** 2),
    0,
  ]);
  return evaluateNodes(wearWorkspace(statistics), Float64Array.from(ratios));
}

/** The posterior that the known readings alone give on the nodes of another. */
function posteriorOf(
  all: WearPosterior,
  ofAll: WearStatistics,
  known: readonly WearReading[],
): { readonly posterior: WearPosterior; readonly statistics: WearStatistics } {
  const statistics = wearStatistics(known);
  const [before, then] = [nodesOf(all, ofAll), nodesOf(all, statistics)];
  const field = (index: number) => all.weight.map((_, node) => then[NODE * node + index] as number);
  const logs = all.weight.map(
    (share, k) => Math.log(share) - (before[NODE * k] as number) + (field(0)[k] as number),
  );
  const most = Math.max(...logs);
  const sum = logs.reduce((total, log) => total + Math.exp(log - most), 0);
  const degreesOfFreedom = known.length - 4;
  const posterior: WearPosterior = {
    ...all,
    weight: logs.map((log) => Math.exp(log - most) / sum),
    beta0: field(1),
    beta1: field(2),
    inverse00: field(3),
    inverse01: field(4),
    inverse11: field(5),
    s2: field(6).map((squares) => squares / degreesOfFreedom),
    degreesOfFreedom,
    table: studentTable(degreesOfFreedom),
    yCentre: statistics.yCentre,
  };
  return { posterior, statistics };
}

test('the level from sums that are moved on is that of the known readings summed anew, runs by turns included', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 400 }),
      fc.nat(),
      fc.nat(),
      fc.boolean(),
      (seed, anyUnit, any, byTurns) => {
        const made = simulateFleet(seed, 5, truth, false).readings;
        const readings = byTurns ? made.toSorted((one, other) => one.x - other.x) : made;
        const statistics = wearStatistics(readings);
        const all = integrateWear(statistics);
        const { taken } = takenReadings(statistics, readings);
        const unit = anyUnit % statistics.unitNames.length;
        const name = statistics.unitNames[unit];
        const own = readings.filter((reading) => reading.unit === name);
        const others = readings.filter((reading) => reading.unit !== name);
        const runs = new KnownRuns(statistics, taken);
        const atNodes = new UnitAtNodes(nodeBase(all, statistics));
        runs.begin(unit);
        const [from, to] = [statistics.firstRun[unit] as number, statistics.firstRun[unit + 1] as number];
        atNodes.begin(wearWorkspace(statistics).runs, from, to);
        const count = any % own.length;
        while (runs.readings < count) {
          runs.take();
          atNodes.follow(runs);
        }
        const next = own[count] as WearReading;
        const expected = posteriorOf(all, statistics, [...others, ...own.slice(0, count)]);
        const place = expected.statistics.unitNames.indexOf(name as string);
        const run = expected.statistics.runNames.indexOf(next.run);
        const line = runLevel(
          expected.posterior,
          expected.statistics,
          count === 0 ? null : place,
          run < 0 ? null : run,
        );
        atNodes.foretell(
          runs,
          runs.runOf((taken.firstReading[unit] as number) + count),
          next.x,
          expected.posterior.table,
        );
        const found = atNodes.level.line;
        line.weight.forEach((weight, node) => {
          const at = (column: Float64Array) => column[node] as number;
          expect(at(found.weight)).toBeCloseTo(weight, 9);
          const mean = at(line.start) + at(line.slope) * next.x;
          expect(at(found.start)).toBeCloseTo(mean, 10);
          const square =
            at(line.startStart) + next.x * (2 * at(line.startSlope) + next.x * at(line.slopeSlope));
          expect(at(found.startStart) / square).toBeCloseTo(1, 7);
          expect(at(found.s2) / at(line.s2)).toBeCloseTo(1, 8);
        });
        const shift = line.weight.reduce(
          (sum, share, node) => sum + share ** 2 / (all.weight[node] as number),
          0,
        );
        expect(atNodes.level.shift / shift).toBeCloseTo(1, 7);
      },
    ),
    { seed: 5, numRuns: 25 },
  );
}, 120_000);
