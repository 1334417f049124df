/** Text for a value that does not exist; screens add the reason. */
export const noValue = '–';

const narrowSpace = '\u202f';
const space = '\u00a0';

function exists(value: number | null): value is number {
  return value !== null && Number.isFinite(value);
}

/** A number with a true minus sign, spaces between thousands and no minus before a rounded zero. */
function written(value: number, decimals: number): string {
  const digits = Math.abs(value).toFixed(decimals);
  const [whole = '0', fraction] = digits.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, narrowSpace);
  const sign = value < 0 && Number(digits) !== 0 ? '\u2212' : '';
  return sign + grouped + (fraction === undefined ? '' : `.${fraction}`);
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
  return withSd(slope_mm_per_10kh, sd_mm_per_10kh, `mm per 10${narrowSpace}000${space}h`);
}

/** Hours, to the hour, with their unit: '12 345 h'. */
export function formatHours(hours: number | null): string {
  return exists(hours) ? `${written(hours, 0)}${space}h` : noValue;
}

/** An ISO date as it is; anything else is no value. */
export function formatDate(date: string | null): string {
  return date !== null && /^\d{4}-\d{2}-\d{2}$/.test(date) ? date : noValue;
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
  return probability < 0.001 ? '<0.001' : written(probability, probability < 0.1 ? 3 : 2);
}
