import { type DateStyleName, numberStyles, writingInForce } from './writingStyle';

/** Text for a value that does not exist; screens add the reason. */
export const noValue = '–';

const space = '\u00a0';

function exists(value: number | null): value is number {
  return value !== null && Number.isFinite(value);
}

/** Digits with the signs of the style in force. */
function signed(digits: string): string {
  const { thousands, decimal } = numberStyles[writingInForce().numbers];
  const [whole = '0', fraction] = digits.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, thousands);
  return grouped + (fraction === undefined ? '' : decimal + fraction);
}

/** A number with a true minus sign, thousands parted and no minus before a rounded zero. */
function written(value: number, decimals: number): string {
  const digits = Math.abs(value).toFixed(decimals);
  return (value < 0 && Number(digits) !== 0 ? '\u2212' : '') + signed(digits);
}

/** A number without a unit, with so many decimals. */
export function formatFixed(value: number | null, decimals: number): string {
  return exists(value) ? written(value, decimals) : noValue;
}

/** A number with at most so many significant digits and no zeros after them, up to six decimals. */
export function formatSignificant(value: number | null, digits: number): string {
  if (!exists(value)) return noValue;
  const [, fraction = ''] = String(Number(Number(value.toPrecision(digits)).toFixed(6))).split('.');
  return written(Number(value.toPrecision(digits)), fraction.length);
}

/** A number as a field for typing holds it: six significant digits, decimal point, nothing between thousands. */
export function typedNumber(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** Decimals that a length in mm deserves: three where its standard deviation is under 0.02 mm or unknown, else two. */
function decimalsFor(sd_mm: number | null): number {
  return exists(sd_mm) && sd_mm >= 0.02 ? 2 : 3;
}

/** A count such as '1 204'. */
export function formatCount(value: number | null): string {
  return exists(value) ? written(value, 0) : noValue;
}

/** Pieces: whole ones as they are, others with one decimal. */
export function formatPieces(pieces: number | null): string {
  return exists(pieces) ? written(pieces, Number.isInteger(pieces) ? 0 : 1) : noValue;
}

/** A length in mm without its unit, with decimals by its standard deviation. */
export function formatLength(value_mm: number | null, sd_mm: number | null = null): string {
  return exists(value_mm) ? written(value_mm, decimalsFor(sd_mm)) : noValue;
}

/** A length such as '0.312 mm'. */
export function formatMm(value_mm: number | null, sd_mm: number | null = null): string {
  return exists(value_mm) ? `${formatLength(value_mm, sd_mm)}${space}mm` : noValue;
}

/** A length with its standard deviation, '0.312 ± 0.012' and the given unit. */
function withSd(value: number | null, sd: number | null, unit: string): string {
  if (!exists(value)) return noValue;
  const decimals = decimalsFor(sd);
  const spread = exists(sd) ? `${space}±${space}${written(sd, decimals)}` : '';
  return `${written(value, decimals)}${spread}${space}${unit}`;
}

/** A level with its standard deviation: '0.312 ± 0.012 mm'. */
export function formatLevel(level_mm: number | null, sd_mm: number | null): string {
  return withSd(level_mm, sd_mm, 'mm');
}

/** A wear rate with its standard deviation: '0.081 ± 0.010 mm per 10 000 h'. */
export function formatRate(slope_mm_per_10kh: number | null, sd_mm_per_10kh: number | null): string {
  return withSd(slope_mm_per_10kh, sd_mm_per_10kh, rateUnit());
}

/** Hours, to the hour, with their unit: '12 345 h'. */
export function formatHours(hours: number | null): string {
  return exists(hours) ? `${written(hours, 0)}${space}h` : noValue;
}

const monthNames = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** A day from its ISO date, in the style in force; anything else is no value. */
export function formatDate(date: string | null): string {
  const parts = date === null ? null : /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (parts === null) return noValue;
  const [, year = '', month = '', day = ''] = parts;
  return dayIn[writingInForce().dates](year, month, day);
}

const dayIn: Readonly<Record<DateStyleName, (year: string, month: string, day: string) => string>> = {
  iso: (year, month, day) => `${year}-${month}-${day}`,
  points: (year, month, day) => `${day}.${month}.${year}`,
  strokes: (year, month, day) => `${day}/${month}/${year}`,
  named: (year, month, day) =>
    `${Number(day)}${space}${monthNames[Number(month) - 1] ?? month}${space}${year}`,
};

/** A moment from its ISO text, to the minute: '2026-03-01 08:00 UTC'. */
export function formatMoment(at: string): string {
  return `${formatDate(at.slice(0, 10))} ${at.slice(11, 16)} UTC`;
}

/** How a time axis writes its months, as a d3 pattern. */
export function monthPattern(): string {
  return monthIn[writingInForce().dates];
}

const monthIn: Readonly<Record<DateStyleName, string>> = {
  iso: '%Y-%m',
  points: '%m.%Y',
  strokes: '%m/%Y',
  named: '%b %Y',
};

/** The unit of a wear rate: 'mm per 10 000 h'. */
export function rateUnit(): string {
  return `mm per ${formatHours(10_000)}`;
}

/** How far forecasts reach: '100 000 h' from now. */
export function forecastReach(): string {
  return formatHours(100_000);
}

/** A share in percent, with the digits that it was given with, '10 %' and '99.5 %', or with so many decimals. */
export function formatPercent(share: number | null, decimals: number | null = null): string {
  if (!exists(share)) return noValue;
  const percent = 100 * share;
  return `${decimals === null ? formatSignificant(percent, 4) : written(percent, decimals)}${space}%`;
}

/** A chance in percent: '<1 %', whole percents between, '>99 %'. */
export function formatChance(chance: number | null): string {
  if (!exists(chance)) return noValue;
  if (chance < 0.01) return `<1${space}%`;
  if (chance > 0.99) return `>99${space}%`;
  return `${written(chance * 100, 0)}${space}%`;
}

/** A ratio such as '1.66'. */
export function formatRatio(ratio: number | null): string {
  return exists(ratio) ? written(ratio, 2) : noValue;
}

/** A score in standard deviations such as '−3.24', without a unit. */
export function formatScore(score: number | null): string {
  return exists(score) ? written(score, 2) : noValue;
}

/** A tail probability or q-value: '<0.001', three decimals up to 0.1, two above. */
export function formatProbability(probability: number | null): string {
  if (!exists(probability)) return noValue;
  return probability < 0.001 ? `<${written(0.001, 3)}` : written(probability, probability < 0.1 ? 3 : 2);
}
