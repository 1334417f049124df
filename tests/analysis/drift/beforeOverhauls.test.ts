import { expect, test } from 'vitest';
import { scoresBeforeOverhauls } from '../../../lib/analysis/drift/beforeOverhauls';
import { drawsFor } from '../../../lib/batch/demo/draws';
import { forecastResiduals } from '../../../lib/stats/residuals/forecastResiduals';
import { takenReadings } from '../../../lib/stats/residuals/TakenReadings';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';

const units = ['A', 'B', 'C', 'D'];
/** Every overhaul ends a run with a reading as found and starts the next with one as left. */
const taken = units.flatMap((unit) => {
  const draws = drawsFor(`before/${unit}`);
  return [1, 2, 3, 4].flatMap((overhaul) => [
    { unit, overhaul, run: `${unit} ${overhaul}`, x: draws.normal(1, 0.1), y: draws.normal(0.03, 0.004) },
    { unit, overhaul, run: `${unit} ${overhaul + 1}`, x: 0, y: draws.normal(0.025, 0.004) },
  ]);
});
const readings = taken.map(({ unit, run, x, y }) => ({ unit, run, x, y, weight: 1 }));
const overhauls = taken.map(({ unit, overhaul }) => `${unit}-${overhaul}`);
const statistics = wearStatistics(readings);
const posterior = integrateWear(statistics);
const { taken: columns, places } = takenReadings(statistics, readings);
const names = [...new Set(overhauls)];
const openings = Int32Array.from(places, (place) => names.indexOf(overhauls[place] ?? ''));

test('scores before each overhaul are those of the group with overhauls as occasions, and differ from those in sequence', () => {
  const scoresOf = scoresBeforeOverhauls(posterior, statistics, columns, openings);
  const byOccasion = forecastResiduals(posterior, statistics, readings, overhauls);
  const inSequence = forecastResiduals(posterior, statistics, readings);
  for (const unit of units) {
    const own = [...scoresOf(unit)];
    expect(own).toEqual(byOccasion.filter(({ reading }) => reading.unit === unit).map(({ z }) => z));
    expect(own).not.toEqual(inSequence.filter(({ reading }) => reading.unit === unit).map(({ z }) => z));
  }
});

test('a unit that is not there has no scores', () => {
  expect(scoresBeforeOverhauls(posterior, statistics, columns, openings)('E')).toHaveLength(0);
});
