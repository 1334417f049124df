/** Decimal sign that a column has been settled to. */
export type SettledSign = 'point' | 'comma';

/** One unsigned number as written. */
export interface Numeral {
  readonly value: number;
  /** Digits before and after the decimal sign, separators taken out. */
  readonly whole: string;
  readonly decimals: string;
  readonly note: string | null;
}

const separatorNames: Record<string, string> = {
  ',': 'comma',
  '.': 'point',
  ' ': 'space',
  "'": 'apostrophe',
};

const plain = { point: /^(\d*)(?:\.(\d*))?$/, comma: /^(\d*)(?:,(\d*))?$/ } as const;

/** The first group has no leading zero ('0,310' is no thousands) and all separators are the same. */
const grouped = {
  point: /^([1-9]\d{0,2}(?:([, '])\d{3})(?:\2\d{3})*)(?:\.(\d*))?$/,
  comma: /^([1-9]\d{0,2}(?:([. '])\d{3})(?:\2\d{3})*)(?:,(\d*))?$/,
} as const;

function numeral(whole: string, decimals: string, exponent: string, note: string | null): Numeral | null {
  const value = Number(`${whole || '0'}.${decimals || '0'}e${exponent}`);
  const lostAll = value === 0 && /[1-9]/.test(whole + decimals);
  return Number.isFinite(value) && !lostAll ? { value, whole, decimals, note } : null;
}

/**
 * Reads one unsigned number from a tidied text, or null if it is not written as one: thousands separators (comma or
 * point, whichever is not the decimal sign, space, apostrophe) count only between groups of three digits, of one kind
 * in one number; an exponent only without them. What a double cannot hold (overflow, underflow to 0) is null.
 */
export function readNumeral(text: string, sign: SettledSign): Numeral | null {
  const withExponent = /^([\d.,]*\d[.,]?)e([+-]?\d{1,3})$/i.exec(text);
  const mantissa = withExponent?.[1] ?? text;
  if (!/\d/.test(mantissa)) return null;
  const single = plain[sign].exec(mantissa);
  if (single !== null) {
    const note = withExponent === null ? null : 'written with an exponent';
    return numeral(single[1] ?? '', single[2] ?? '', withExponent?.[2] ?? '0', note);
  }
  const groups = withExponent === null ? grouped[sign].exec(mantissa) : null;
  if (groups === null) return null;
  const separator = groups[2] ?? '';
  const note = `thousands ${separatorNames[separator] ?? separator} taken out`;
  return numeral((groups[1] ?? '').replaceAll(separator, ''), groups[3] ?? '', '0', note);
}
