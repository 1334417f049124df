import { execFileSync } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readingsOf } from './benchFleet';
import { compareFits, type FitsCompared } from './peerFits';
import { runMeasured } from './runMeasured';
import { type StepSeconds, stepSeconds } from './stepSeconds';
import { writeFleetFolder } from './writeFleetFolder';

/** What a fleet of one size took: the whole batch from files to tables, and the peer on the same files and cores. */
export interface FleetBench {
  readonly units: number;
  readonly readings: number;
  readonly batch_s: number;
  /** Seconds of processor time; null where the system does not tell. */
  readonly batchCpu_s: number | null;
  readonly peak_MiB: number | null;
  /** Null for a fleet too large to be analysed in one piece here. */
  readonly steps: StepSeconds | null;
  /** Null where the peer is not installed, or was not asked. */
  readonly peer: PeerSeconds | null;
  readonly compared: FitsCompared | null;
}

/** What the peer took: cutting runs, fitting and forecasting, all from its start, and of processor time. */
export interface PeerSeconds {
  readonly cut_s: number;
  readonly fit_s: number;
  readonly whole_s: number;
  readonly wholeCpu_s: number | null;
}

/** Units of a sister group, whatever the fleet: a fleet grows by groups. */
export const unitsPerGroup = 100;
/** Steps are timed on fleets that one process takes in at once. */
const mostInOnePiece = 1000;

const pathOf = (name: string) => fileURLToPath(new URL(name, import.meta.url));

/** True if R with lme4 and data.table is installed. */
export function hasPeer(): boolean {
  try {
    execFileSync('Rscript', ['-e', 'library(lme4); library(data.table)'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** Writes a fleet and takes the time of the batch command and of the peer on it, one after the other. */
export async function fleetBench(folder: string, units: number, withPeer: boolean): Promise<FleetBench> {
  const data = join(folder, `fleet-${units}`);
  const out = join(folder, `out-${units}`);
  const cores = String(availableParallelism());
  await writeFleetFolder(data, { units, unitsPerGroup, partitioned: true });
  const batch = await runMeasured(process.execPath, [
    pathOf('../analyse.mjs'),
    ...['--data', data, '--out', out, '--threads', cores],
  ]);
  const steps = units <= mostInOnePiece ? await stepSeconds(data) : null;
  const peer = withPeer ? await peerSeconds(data, cores, join(folder, `peer-${units}.csv`)) : null;
  return {
    units,
    readings: readingsOf(units),
    batch_s: batch.wall_s,
    batchCpu_s: batch.cpu_s,
    peak_MiB: batch.peak_MiB,
    steps,
    peer,
    compared:
      peer === null ? null : await compareFits(join(out, 'fits.csv'), join(folder, `peer-${units}.csv`)),
  };
}

async function peerSeconds(data: string, cores: string, fits: string): Promise<PeerSeconds> {
  const { stdout, wall_s, cpu_s } = await runMeasured('Rscript', [pathOf('peer.R'), data, cores, fits]);
  const [cut_s = Number.NaN, fit_s = Number.NaN] = stdout.trim().split(' ').map(Number);
  return { cut_s, fit_s, whole_s: wall_s, wholeCpu_s: cpu_s };
}

/** Exponent by which seconds grow with units, by least squares on logarithms; null of a single size. */
export function growthExponent(
  rows: readonly { readonly units: number; readonly seconds: number }[],
): number | null {
  if (rows.length < 2) return null;
  const x = rows.map(({ units }) => Math.log(units));
  const y = rows.map(({ seconds }) => Math.log(seconds));
  const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanX, meanY] = [meanOf(x), meanOf(y)];
  const sxy = x.reduce((sum, value, k) => sum + (value - meanX) * ((y[k] ?? 0) - meanY), 0);
  const sxx = x.reduce((sum, value) => sum + (value - meanX) ** 2, 0);
  return sxy / sxx;
}
