import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { growthExponent } from '../../../lib/batch/bench/fleetBench';
import { compareFits } from '../../../lib/batch/bench/peerFits';
import { runMeasured } from '../../../lib/batch/bench/runMeasured';

const folder = mkdtempSync(join(tmpdir(), 'bench-figures-'));
afterAll(() => rmSync(folder, { recursive: true }));

const header =
  'group,series,slope_mm_per_10kh,sd_noise_mm,sd_start_mm,sd_slope_unit,sd_slope_run,reml_criterion';
function fits(name: string, ...rows: string[]): string {
  const path = join(folder, name);
  writeFileSync(path, `${[header, ...rows].join('\n')}\n`);
  return path;
}

describe('growthExponent', () => {
  it('finds the exponent of a power law, and none of a single size', () => {
    const rows = [100, 1_000, 10_000].map((units) => ({ units, seconds: 0.02 * units ** 1.1 }));
    expect(growthExponent(rows)).toBeCloseTo(1.1, 10);
    expect(growthExponent(rows.slice(1, 2))).toBeNull();
  });
});

describe('compareFits', () => {
  const ours = fits(
    'ours.csv',
    'F,runout,0.01,0.002,0.003,0.002,0,-100',
    'F,offset,0.00001,0.01,0.02,0.01,0.01,-50',
  );

  it('names the largest difference of each kind, on the scale of the noise where a value is smaller', async () => {
    const peer = fits(
      'peer.csv',
      'F,offset,0.00002,0.01,0.0202,0.01,0.01,-50',
      'F,runout,0.0101,0.002,0.003,0.002,1e-7,-100.1',
    );
    const found = await compareFits(ours, peer);
    expect(found.fits).toBe(2);
    // 0.0101 against 0.01 counts in full; 0.00002 against 0.00001 is a thousandth of the noise.
    expect(found.slopes).toBeCloseTo(0.01, 10);
    expect(found.sds).toBeCloseTo(0.01, 10);
    expect(found.reml).toBeCloseTo(0.001, 10);
  });

  it('refuses files without a fit in common', async () => {
    await expect(compareFits(ours, fits('none.csv'))).rejects.toThrow(/got none/);
  });
});

describe('runMeasured', () => {
  it('tells time, processor time and memory of a command that works for a while', async () => {
    const work =
      'const kept = Buffer.alloc(2e8, 1); const end = Date.now() + 1500; while (Date.now() < end); console.log(kept.length)';
    const measured = await runMeasured(process.execPath, ['-e', work]);
    expect(measured.stdout.trim()).toBe('200000000');
    expect(measured.wall_s).toBeGreaterThan(1.4);
    expect(measured.peak_MiB).toBeGreaterThan(190);
    expect(measured.cpu_s).toBeGreaterThan(0);
    expect(measured.cpu_s).toBeLessThan(measured.wall_s + 1);
  });

  it('fails with what the command said', async () => {
    await expect(runMeasured(process.execPath, ['-e', 'throw new Error("no fleet")'])).rejects.toThrow(
      /no fleet/,
    );
  });
});
