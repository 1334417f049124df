import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { availableParallelism, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { benchFigures } from '../../analysis/calibration/benchFigures';
import { runMain, UnusableArguments } from '../runMain';
import { type FleetBench, fleetBench, growthExponent, hasPeer, unitsPerGroup } from './fleetBench';
import { importBench } from './importBench';

const usage = `Usage: npm run -s bench -- [--readings N] [--units N,N,...] [--write]
  --readings  readings of the import alone (2,000,000; 0: not measured)
  --units     sizes of the fleets (100,1000,10000)
  --write     keep the table for Methods`;
const table = fileURLToPath(new URL('../../analysis/calibration/bench.json', import.meta.url));

async function main(words: readonly string[]): Promise<number> {
  const { readings, sizes, isKept } = readArguments(words);
  const folder = await mkdtemp(join(tmpdir(), 'endfloat-bench-'));
  try {
    const imports = readings === 0 ? [] : await importBench(folder, readings);
    console.table(
      imports.map(({ bench, peer, peer_s, ours_s }) => ({
        bench,
        peer,
        'peer, s': peer_s.toFixed(2),
        'ours, s': ours_s.toFixed(2),
        ratio: (ours_s / peer_s).toFixed(1),
      })),
    );
    const withPeer = hasPeer();
    if (!withPeer) process.stdout.write('R with lme4 and data.table is not installed: no peer.\n');
    const fleets: FleetBench[] = [];
    for (const units of sizes) {
      fleets.push(await fleetBench(folder, units, withPeer));
      console.table(fleets.map(row));
    }
    const growth = growthExponent(
      fleets.map(({ units, batch_s, batchCpu_s }) => ({ units, seconds: batchCpu_s ?? batch_s })),
    );
    process.stdout.write(
      `Growth of the batch with units: exponent ${growth?.toFixed(2) ?? 'of one size none'}\n`,
    );
    if (isKept) {
      const machine = { cores: availableParallelism(), memory_GiB: Math.round(totalmem() / 2 ** 30) };
      // What was measured in a browser by hand stays.
      const { page } = benchFigures;
      const kept = { machine, unitsPerGroup, imports, fleets, growth, page };
      await writeFile(table, `${JSON.stringify(kept, threeDigits, 2)}\n`);
    }
    return 0;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Times have no more digits than a second run would show again. */
function threeDigits(_: string, value: unknown): unknown {
  return typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(3)) : value;
}

function row({ units, readings, batch_s, batchCpu_s, peak_MiB, peer, compared }: FleetBench) {
  return {
    units,
    readings,
    'batch, s': batch_s.toFixed(1),
    'memory, MiB': peak_MiB?.toFixed(0) ?? 'not told',
    'peer, s': peer?.whole_s.toFixed(1) ?? 'none',
    'peer / batch': peer === null ? 'none' : (peer.whole_s / batch_s).toFixed(2),
    'batch, CPU s': batchCpu_s?.toFixed(1) ?? 'not told',
    'peer, CPU s': peer?.wholeCpu_s?.toFixed(1) ?? 'none',
    'largest difference of fits': compared === null ? 'none' : compared.reml.toExponential(1),
  };
}

function readArguments(words: readonly string[]) {
  const { values } = parseArgs({
    args: [...words],
    options: {
      readings: { type: 'string', default: '2000000' },
      units: { type: 'string', default: '100,1000,10000' },
      write: { type: 'boolean', default: false },
    },
  });
  const readings = Number(values.readings);
  if (!Number.isInteger(readings) || (readings !== 0 && readings < 20))
    throw new UnusableArguments(`--readings requires 0 or a whole number from 20, got '${values.readings}'`);
  const sizes = values.units.split(',').map(Number);
  if (!sizes.every((units) => Number.isInteger(units) && units >= 1))
    throw new UnusableArguments(`--units requires whole numbers from 1 with commas, got '${values.units}'`);
  return { readings, sizes, isKept: values.write };
}

await runMain(main, usage);
