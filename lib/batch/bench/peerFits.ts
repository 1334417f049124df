import { readFile } from 'node:fs/promises';
import { csvParse } from 'd3-dsv';

/** How far two files of fits are apart. */
export interface FitsCompared {
  readonly fits: number;
  /** Largest relative difference of the REML criterion, and of slopes and SDs that are told from zero. */
  readonly reml: number;
  readonly slopes: number;
  readonly sds: number;
  /** SDs that are at zero, or too near to it for two searches to agree, and slopes within 2 % of the start an interval. */
  readonly leftOut: number;
}

const sdColumns = ['sd_noise_mm', 'sd_start_mm', 'sd_slope_unit', 'sd_slope_run'] as const;
/** A spread of slopes below this share of the noise moves the criterion by less than a search tells. */
const leastSd = 0.1;

/** Compares fits.csv of the analysis with that of the peer, fit by fit. */
export async function compareFits(ours: string, peer: string): Promise<FitsCompared> {
  const peers = new Map(
    csvParse(await readFile(peer, 'utf8')).map((row) => [`${row.group} ${row.series}`, row]),
  );
  const largest = { reml: 0, slopes: 0, sds: 0 };
  let [fits, leftOut] = [0, 0];
  for (const row of csvParse(await readFile(ours, 'utf8'))) {
    const other = peers.get(`${row.group} ${row.series}`);
    if (other === undefined) continue;
    fits++;
    const apart = (column: string) =>
      Math.abs(Number(row[column]) - Number(other[column])) / Math.abs(Number(row[column]));
    largest.reml = Math.max(largest.reml, apart('reml_criterion'));
    const noise = Number(row.sd_noise_mm);
    if (Math.abs(Number(row.slope_mm_per_10kh)) < leastSd * noise) leftOut++;
    else largest.slopes = Math.max(largest.slopes, apart('slope_mm_per_10kh'));
    for (const column of sdColumns) {
      if (Number(row[column]) < leastSd * noise) leftOut++;
      else largest.sds = Math.max(largest.sds, apart(column));
    }
  }
  if (fits === 0)
    throw new Error(`compareFits requires fits of the same groups in ${ours} and ${peer}, got none`);
  return { fits, ...largest, leftOut };
}
