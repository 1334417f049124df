import { readFile } from 'node:fs/promises';
import { csvParse } from 'd3-dsv';

/** How far two files of fits are apart. */
export interface FitsCompared {
  readonly fits: number;
  /** Largest relative difference of the REML criterion. */
  readonly reml: number;
  /**
   * Largest differences of slopes and of SDs, as shares of the value or of the noise, whichever is larger: one much smaller than the
   * noise moves the criterion by less than a search tells, and has no digits that two searches could agree on.
   */
  readonly slopes: number;
  readonly sds: number;
}

const sdColumns = ['sd_noise_mm', 'sd_start_mm', 'sd_slope_unit', 'sd_slope_run'] as const;

/** Compares fits.csv of the analysis with that of the peer, fit by fit. */
export async function compareFits(ours: string, peer: string): Promise<FitsCompared> {
  const peers = new Map(
    csvParse(await readFile(peer, 'utf8')).map((row) => [`${row.group} ${row.series}`, row]),
  );
  const largest = { reml: 0, slopes: 0, sds: 0 };
  let fits = 0;
  for (const row of csvParse(await readFile(ours, 'utf8'))) {
    const other = peers.get(`${row.group} ${row.series}`);
    if (other === undefined) continue;
    fits++;
    const apart = (column: string, scale: number) => {
      const [own, others] = [Number(row[column]), Number(other[column])];
      return Math.abs(own - others) / Math.max(Math.abs(own), scale);
    };
    const noise_mm = Number(row.sd_noise_mm);
    largest.reml = Math.max(largest.reml, apart('reml_criterion', 0));
    largest.slopes = Math.max(largest.slopes, apart('slope_mm_per_10kh', noise_mm));
    for (const column of sdColumns) largest.sds = Math.max(largest.sds, apart(column, noise_mm));
  }
  if (fits === 0)
    throw new Error(`compareFits requires fits of the same groups in ${ours} and ${peer}, got none`);
  return { fits, ...largest };
}
