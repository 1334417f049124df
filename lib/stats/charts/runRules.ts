/** The run rules by name, in the order of their numbers 1 to 8. */
export const RUN_RULES = [
  'oneBeyond3',
  'nineOnOneSide',
  'sixInTrend',
  'fourteenAlternating',
  'twoOfThreeBeyond2',
  'fourOfFiveBeyond1',
  'fifteenWithin1',
  'eightOutside1',
] as const;

/** One of the run rules for patterns on a chart of z, numbered 1 to 8 in ISO 7870-2 and by Nelson. */
export type RunRule = (typeof RUN_RULES)[number];

const NINE = 9;
const SIX = 6;
const FOURTEEN = 14;
const FIFTEEN = 15;
const EIGHT = 8;

/**
 * Positions, from 0, of the readings at which a rule's pattern is complete; each rule on its own.
 *
 * 1: one z beyond 3. 2: nine on one side of 0. 3: six rising or falling throughout. 4: fourteen going up and down in
 * turn. 5: two of three beyond 2 on one side. 6: four of five beyond 1 on one side. 7: fifteen within 1. 8: eight
 * outside 1, on both sides. A z exactly on a line is not beyond it and breaks rules 2, 7 and 8; a tie breaks 3 and
 * 4. The last z of 5 and 6 must itself be beyond; both take what there is of their three or five readings.
 * ISO 7870-2:2013, annex B; Nelson 1984, Journal of Quality Technology 16, 237; Champ and Woodall 1987.
 */
export function runRuleSignals(z: readonly number[], rule: RunRule): readonly number[] {
  const complete = completeAt(z, rule);
  return z.flatMap((_, index) => (complete(index) ? [index] : []));
}

/** Of the positions of a rule's signals those that do not directly follow another: one for each pattern. */
export function patternStarts(signals: readonly number[]): readonly number[] {
  return signals.filter((index, k) => signals[k - 1] !== index - 1);
}

function completeAt(z: readonly number[], rule: RunRule): (index: number) => boolean {
  const last = (count: number, index: number) => z.slice(Math.max(0, index + 1 - count), index + 1);
  const whole = (count: number, test: (values: readonly number[]) => boolean) => (index: number) =>
    index + 1 >= count && test(last(count, index));
  switch (rule) {
    case 'oneBeyond3':
      return (index) => Math.abs(z[index] as number) > 3;
    case 'nineOnOneSide':
      return whole(NINE, onOneSide);
    case 'sixInTrend':
      return whole(SIX, (values) => onOneSide(stepsOf(values)));
    case 'fourteenAlternating':
      return whole(FOURTEEN, (values) => onOneSide(stepsOf(values).map((step, k) => (k % 2 ? -step : step))));
    case 'twoOfThreeBeyond2':
      return (index) => manyBeyond(last(3, index), 2, 2);
    case 'fourOfFiveBeyond1':
      return (index) => manyBeyond(last(5, index), 4, 1);
    case 'fifteenWithin1':
      return whole(FIFTEEN, (values) => values.every((value) => Math.abs(value) < 1));
    case 'eightOutside1':
      return whole(EIGHT, (values) => values.every((value) => Math.abs(value) > 1) && !onOneSide(values));
  }
}

function onOneSide(values: readonly number[]): boolean {
  return values.every((value) => value > 0) || values.every((value) => value < 0);
}

function stepsOf(values: readonly number[]): readonly number[] {
  return values.slice(1).map((value, k) => value - (values[k] as number));
}

/** Whether the last value and enough of the others lie beyond the line on its side. */
function manyBeyond(values: readonly number[], needed: number, line: number): boolean {
  const side = Math.sign(values.at(-1) as number);
  const beyond = values.map((value) => side * value > line);
  return beyond.at(-1) === true && beyond.filter(Boolean).length >= needed;
}
