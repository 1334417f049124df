import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { RUN_RULES, type RunRule, runRuleSignals } from './runRules';

/** What one run rule costs. */
export interface RunRuleCost {
  readonly rule: RunRule;
  /** Expected false signals a year of the whole fleet: patterns begun, see patternStarts. */
  readonly expected_per_year: number;
}

/**
 * Expected false signals a year of each run rule over all histories (number of readings of each unit and series).
 *
 * Exact for independent standard normal z: the sum over readings of the probability that the pattern is complete
 * there and was not at the reading before. Expected numbers of several rules add, although their signals often
 * come together. Throws unless years are positive.
 */
export function runRuleCosts(histories: readonly number[], years: number): readonly RunRuleCost[] {
  if (!(years > 0)) throw new Error(`runRuleCosts requires positive years, got ${years}`);
  const longest = histories.reduce((most, readings) => Math.max(most, readings), 0);
  return RUN_RULES.map((rule) => {
    const expected = expectedPatterns(rule, longest);
    const sum = histories.reduce((total, readings) => total + (expected[readings - 1] ?? 0), 0);
    return { rule, expected_per_year: sum / years };
  });
}

/** Expected number of a rule's patterns begun in the first 1, 2, ... n readings. */
export function expectedPatterns(rule: RunRule, readings: number): Float64Array {
  const { window, complete, twice } = PATTERNS[rule];
  let sum = 0;
  return Float64Array.from({ length: readings }, (_, k) => {
    const known = Math.min(k + 1, window + 1);
    sum += complete(Math.min(known, window)) - (known >= 2 ? twice(known) : 0);
    return sum;
  });
}

/** Chances that a pattern is complete at a reading, and at it and the one before, by the readings there are. */
interface Pattern {
  readonly window: number;
  readonly complete: (readings: number) => number;
  readonly twice: (readings: number) => number;
}

const BEYOND = [1, 2, 3].map((line) => 2 * normalCdf(-line, 0, 1)) as [number, number, number];

const PATTERNS: Readonly<Record<RunRule, Pattern>> = {
  oneBeyond3: whole(1, (n) => BEYOND[2] ** n),
  nineOnOneSide: whole(9, (n) => 2 * 0.5 ** n),
  sixInTrend: whole(6, (n) => 2 / factorial(n)),
  fourteenAlternating: whole(14, (n) => (2 * zigzags(n)) / factorial(n)),
  twoOfThreeBeyond2: counted('twoOfThreeBeyond2', 3, 2),
  fourOfFiveBeyond1: counted('fourOfFiveBeyond1', 5, 1),
  fifteenWithin1: whole(15, (n) => (1 - BEYOND[0]) ** n),
  // All outside 1, and neither the first eight nor the last eight on one side.
  eightOutside1: whole(8, (n) => BEYOND[0] ** n * (n === 8 ? 1 - 2 ** -7 : 1 - 2 * 2 ** -7 + 2 ** -8)),
};

/** A pattern of a whole window: complete at two readings running is the same of one more reading. */
function whole(window: number, chance: (readings: number) => number): Pattern {
  const at = (needed: number) => (readings: number) => (readings < needed ? 0 : chance(readings));
  return { window, complete: at(window), twice: at(window + 1) };
}

/** A pattern that counts readings beyond a line, by going through all ways for readings to lie about it. */
function counted(rule: RunRule, window: number, line: 1 | 2): Pattern {
  const tail = BEYOND[line - 1] as number;
  const cells = [
    { z: 0, chance: 1 - tail },
    { z: line + 0.5, chance: tail / 2 },
    { z: -line - 0.5, chance: tail / 2 },
  ];
  const chanceOf = (readings: number, ends: readonly number[]) => {
    const visit = (z: readonly number[], chance: number): number => {
      if (z.length < readings) {
        return cells.reduce((sum, cell) => sum + visit([...z, cell.z], chance * cell.chance), 0);
      }
      const signals = runRuleSignals(z, rule);
      return ends.every((end) => signals.includes(readings - end)) ? chance : 0;
    };
    return visit([], 1);
  };
  const remembered = (ends: readonly number[]) => {
    const chances = new Map<number, number>();
    return (readings: number) => {
      const chance = chances.get(readings) ?? chanceOf(readings, ends);
      chances.set(readings, chance);
      return chance;
    };
  };
  return { window, complete: remembered([1]), twice: remembered([1, 2]) };
}

function factorial(n: number): number {
  return n <= 1 ? 1 : n * factorial(n - 1);
}

/** Number of orders of n values that go up and down in turn, beginning upwards (Entringer's triangle). */
function zigzags(n: number): number {
  let row = [1];
  for (let k = 1; k <= n; k++) {
    const reversed = row.toReversed();
    let sum = 0;
    row = [0, ...reversed.map((value) => (sum += value))];
  }
  return row.at(-1) as number;
}
