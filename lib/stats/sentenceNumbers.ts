/**
 * Numbers in sentences of the analysis, which stand in files as well as on pages: decimal point, commas between thousands,
 * never powers of ten. Pages write them anew in the reader's own way.
 */

/** Hours with their unit: '12,345 h'. */
export function hoursText(hours: number): string {
  return `${Math.round(hours).toLocaleString('en-GB')} h`;
}

/** A number with two significant digits. */
export function twoDigits(value: number): string {
  const rounded = Number(value.toPrecision(2));
  return rounded.toLocaleString('en-GB', { maximumSignificantDigits: 2 });
}

/** A number with so many decimals. */
export function withDecimals(value: number, decimals: number): string {
  return value.toFixed(decimals);
}

/** A share in percent with the digits that it was given with, '99.5 %', or with so many decimals. */
export function percentText(share: number, decimals: number | null = null): string {
  const percent = 100 * share;
  return `${decimals === null ? Number(percent.toPrecision(4)) : percent.toFixed(decimals)} %`;
}
