import { crossings } from '../../stats/wear/crossing';
import { readingQuantile } from '../../stats/wear/forecast';
import { integrateWear } from '../../stats/wear/integrateWear';
import { runLevel } from '../../stats/wear/runLevel';
import { wearStatistics } from '../../stats/wear/wearStatistics';
import { seededDraws } from './seededDraws';
import { type FleetTruth, simulateFleet } from './simulateFleet';

const LIMIT = 0.45;
const FAR = 20;
const NEXT_OVERHAUL = 1.2;

/** Spreads drawn over what fleets show: noise 0.01 to 0.03 mm, unit spread sometimes none. */
function drawTruth(uniform: () => number): FleetTruth {
  const within = (low: number, high: number) => low + (high - low) * uniform();
  const unitSpread = uniform() < 0.25 ? 0 : 1;
  return {
    noise: within(0.01, 0.03),
    startRun: within(0.005, 0.025),
    slopeRun: within(0.005, 0.02),
    startUnit: unitSpread * within(0, 0.02),
    slopeUnit: unitSpread * within(0, 0.025),
  };
}

/** Numbers of current runs whose true crossing and next reading lie in their 80 % intervals. */
export function coverage(units: number, fleets: number, seed: number) {
  const { uniform, normal } = seededDraws(seed);
  const counts = { runs: 0, crossing: 0, reading: 0 };
  for (let fleet = 0; fleet < fleets; fleet++) {
    const truth = drawTruth(uniform);
    const { readings, current } = simulateFleet(1000 * seed + fleet, units, truth);
    const statistics = wearStatistics(readings);
    const posterior = integrateWear(statistics);
    current.forEach((run, unit) => {
      const line = runLevel(posterior, statistics, unit, (statistics.firstRun[unit + 1] as number) - 1);
      const crossing =
        run.slope > 0 ? Math.max(0, (LIMIT - run.start) / run.slope) : Number.POSITIVE_INFINITY;
      const [early, late] = crossings(line, LIMIT, 'upper', [0.1, 0.9], 0, FAR);
      const inside = crossing >= (early ?? FAR) && crossing <= (late ?? Number.POSITIVE_INFINITY);
      const x = run.lastX + NEXT_OVERHAUL;
      const next = Math.round(100 * (run.start + run.slope * x + truth.noise * normal())) / 100;
      const found = next >= readingQuantile(line, x, 0.1) && next <= readingQuantile(line, x, 0.9);
      counts.runs += 1;
      counts.crossing += inside ? 1 : 0;
      counts.reading += found ? 1 : 0;
    });
  }
  return counts;
}
