import fc from 'fast-check';

/** Numbers spread evenly over a range; fast-check's own doubles crowd towards zero. */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
}
