import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { runMain, UnusableArguments } from '../runMain';
import { importBench } from './importBench';

const usage = 'Usage: npm run -s bench -- [--readings N]';

async function main(words: readonly string[]): Promise<number> {
  const { values } = parseArgs({ args: [...words], options: { readings: { type: 'string' } } });
  const readings = Number(values.readings ?? 2_000_000);
  if (!Number.isInteger(readings) || readings < 20)
    throw new UnusableArguments(`--readings requires a whole number from 20, got '${values.readings}'`);
  const folder = await mkdtemp(join(tmpdir(), 'endfloat-bench-'));
  try {
    const results = [...(await importBench(folder, readings))];
    console.table(
      results.map(({ bench, peer, peer_s, ours_s }) => ({
        bench,
        peer,
        'peer, s': peer_s.toFixed(2),
        'ours, s': ours_s.toFixed(2),
        ratio: (ours_s / peer_s).toFixed(1),
      })),
    );
    return 0;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

await runMain(main, usage);
