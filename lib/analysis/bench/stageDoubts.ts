import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import { boxName, type Clock, type Stage } from './benchEntry';
import { clocks, clocksOf } from './boxes';
import { boxLine, scoreOf } from './boxLine';
import type { DoubtsOfBoxes, TypedReadings } from './checkReadings';
import { questionedScore } from './readingDoubts';
import { intervalVariance, middle_mm, type Reading } from './typedReading';
import type { CheckBasis, Doubt, LineAt } from './types';

/** A pair of stages that misfits more is doubted; exchanged it must fit as 95 % of right pairs do. */
const doubted = 0.9973;
const explained = 0.95;
/** A pair outside the 95 % point is doubted, too, if it fits better by this the other way round: 20 times as likely. */
const farBetter = 2 * Math.log(20);

/** What as found and as left say of each other: exchanged, or too far apart with nothing fitted between. */
export function pairDoubts(basis: CheckBasis, typed: TypedReadings, before: DoubtsOfBoxes): DoubtsOfBoxes {
  return basis.sameState ? againstFound(basis, typed, before) : exchangedStages(basis, typed);
}

function readingOf({ characteristic }: CheckBasis, stage: Stage, clock: Clock | null, typed: TypedReadings) {
  const entry = typed.get(boxName(characteristic, stage, clock));
  return entry?.kind === 'read' && entry.reading.upper_mm !== null ? entry.reading : null;
}

function againstFound(basis: CheckBasis, typed: TypedReadings, before: DoubtsOfBoxes): DoubtsOfBoxes {
  const doubts = new Map<string, readonly Doubt[]>();
  const { gaugeSd_mm } = basis;
  if (gaugeSd_mm === null) return doubts;
  for (const clock of clocksOf(basis)) {
    const [found, left] = [readingOf(basis, 'found', clock, typed), readingOf(basis, 'left', clock, typed)];
    if (found === null || left === null) continue;
    const difference_mm = middle_mm(left) - middle_mm(found);
    const sd_mm = Math.sqrt(2 * gaugeSd_mm ** 2 + intervalVariance(found) + intervalVariance(left));
    if (Math.abs(difference_mm) <= questionedScore * sd_mm) continue;
    const boxes = [
      boxName(basis.characteristic, 'found', clock),
      boxName(basis.characteristic, 'left', clock),
    ];
    // Where one of the two is questioned by itself, that says which.
    if (boxes.some((box) => before.has(box))) continue;
    for (const box of boxes) doubts.set(box, [{ kind: 'before stripping', difference_mm, sd_mm }]);
  }
  return doubts;
}

/**
 * As found and as left exchanged: their squared scores together lie beyond the 99.73 % point of right ones as written, and
 * within the 95 % point the other way round. Of clock readings all positions that both stages have count together.
 */
function exchangedStages(basis: CheckBasis, typed: TypedReadings): DoubtsOfBoxes {
  const pairs = clocksOf(basis).flatMap((clock) => {
    const [found, left] = [readingOf(basis, 'found', clock, typed), readingOf(basis, 'left', clock, typed)];
    return found === null || left === null ? [] : [{ clock, found, left }];
  });
  const [first] = pairs;
  if (first === undefined) return new Map();
  if (basis.shape === 'four_clock' && pairs.length < clocks.length - 1) return new Map();
  const [foundLine, leftLine] = [lineOf(basis, 'found'), lineOf(basis, 'left')];
  if (foundLine === null || leftLine === null) return new Map();
  const [found, left] = [
    meanOf(
      basis,
      'found',
      pairs.map((pair) => pair.found),
      pairs,
    ),
    meanOf(
      basis,
      'left',
      pairs.map((pair) => pair.left),
      pairs,
    ),
  ];
  const written = scoreOf(foundLine, found) ** 2 + scoreOf(leftLine, left) ** 2;
  const exchanged = scoreOf(foundLine, left) ** 2 + scoreOf(leftLine, found) ** 2;
  if (written <= chiSquareQuantile(explained, 2) || exchanged > chiSquareQuantile(explained, 2))
    return new Map();
  if (written <= chiSquareQuantile(doubted, 2) && written <= exchanged + farBetter) return new Map();
  const boxes = pairs.flatMap(({ clock }) => [
    boxName(basis.characteristic, 'found', clock),
    boxName(basis.characteristic, 'left', clock),
  ]);
  return new Map(boxes.map((box) => [box, [{ kind: 'stages exchanged' }]]));
}

function lineOf(basis: CheckBasis, stage: Stage): LineAt | null {
  return basis.shape === 'single' ? boxLine(basis, stage, null) : basis.forecasts[stage].level;
}

/** The reading of a stage, or the mean of its positions less what they are expected to depart from it. */
function meanOf(
  { forecasts }: CheckBasis,
  stage: Stage,
  readings: readonly Reading[],
  pairs: readonly { readonly clock: Clock | null }[],
): Reading {
  const [only] = readings;
  if (readings.length === 1 && only !== undefined) return only;
  const departures = forecasts[stage].clock?.departures_mm;
  const mean = readings.reduce((sum, reading, index) => {
    const clock = pairs[index]?.clock ?? null;
    const departure = clock === null ? 0 : (departures?.[clocks.indexOf(clock)] ?? 0);
    return sum + (middle_mm(reading) - departure) / readings.length;
  }, 0);
  return { text: '', uom: 'mm', lower: mean, upper: mean, lower_mm: mean, upper_mm: mean };
}
