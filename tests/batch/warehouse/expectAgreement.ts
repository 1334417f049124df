import { expect } from 'vitest';

/** Two numbers are the same if they differ by less than `relative` of their size or by less than `smallest`. */
export interface Tolerance {
  readonly relative: number;
  /** By the name of what holds the number. */
  smallest(name: string): number;
}

/** Every number of a result agrees with that of another, and everything else is the same. */
export function expectAgreement(
  actual: unknown,
  expected: unknown,
  tolerance: Tolerance,
  where: string,
  name = '',
): void {
  if (typeof expected === 'number' && typeof actual === 'number') {
    const difference = Math.abs(actual - expected);
    const { relative } = tolerance;
    const isClose =
      difference <= relative * Math.max(Math.abs(actual), Math.abs(expected)) ||
      difference <= tolerance.smallest(name);
    if (!isClose) expect.fail(`${where}: ${actual} is not ${expected} within ${relative} of its size`);
    return;
  }
  if (typeof expected !== 'object' || expected === null || typeof actual !== 'object' || actual === null) {
    if (actual !== expected) expect.fail(`${where}: ${String(actual)} is not ${String(expected)}`);
    return;
  }
  const [ours, theirs] = [Object.entries(actual), Object.entries(expected)];
  if (ours.length !== theirs.length)
    expect.fail(`${where}: ${ours.length} entries where ${theirs.length} are expected`);
  const named = new Map(ours);
  for (const [key, value] of theirs)
    expectAgreement(named.get(key), value, tolerance, `${where} ${key}`, key);
}
