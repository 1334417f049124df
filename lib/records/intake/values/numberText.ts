/**
 * Writes a double as text that reads back as the same double: fewest digits, decimal point, no thousands separators,
 * no exponent ('0.0000001'), minus zero as '0'. Throws RangeError on NaN and infinities: they must reach no file.
 */
export function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`numberText requires a finite number, got ${value}`);
  const shortest = String(value);
  const parts = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(shortest);
  if (parts === null) return shortest;
  const [, minus = '', first = '', rest = '', exponent = '0'] = parts;
  const places = Number(exponent);
  const digits = first + rest;
  return places < 0
    ? `${minus}0.${'0'.repeat(-places - 1)}${digits}`
    : `${minus}${digits.padEnd(places + 1, '0')}`;
}
