/** Digits kept in files: more than any reading has, few enough that a last-bit difference does not show. */
export function rounded(value: number | null, digits: number): number | null {
  return value === null ? null : Number(value.toPrecision(digits));
}

/** A length or a rate as it goes to a file. */
export function lengths(value: number | null): number | null {
  return rounded(value, 8);
}

/** Hours as they go to a file: to a tenth. */
export function hours(value: number | null): number | null {
  return value === null ? null : Math.round(value * 10) / 10;
}

/** A chance as it goes to a file: to a millionth. */
export function chances(value: number | null): number | null {
  return value === null ? null : Math.round(value * 1e6) / 1e6;
}
