import { parseArgs } from 'node:util';
import { runMain, UnusableArguments } from '../runMain';
import { packAsParquet } from './packAsParquet';
import { writeFleetFolder } from './writeFleetFolder';

const usage =
  'Usage: tsx lib/batch/bench/writeFleet.ts --units N --out DIR [--units-per-group N] [--partitioned] [--parquet]';

/** Writes a made fleet of any size with known truth. Returns the exit status. */
async function main(words: readonly string[]): Promise<number> {
  const { values } = parseArgs({
    args: [...words],
    options: {
      units: { type: 'string' },
      out: { type: 'string' },
      'units-per-group': { type: 'string', default: '250' },
      partitioned: { type: 'boolean', default: false },
      parquet: { type: 'boolean', default: false },
    },
  });
  if (values.out === undefined) throw new UnusableArguments('--out is missing: name the folder to write to');
  await writeFleetFolder(values.out, {
    units: wholeNumber('--units', values.units),
    unitsPerGroup: wholeNumber('--units-per-group', values['units-per-group']),
    partitioned: values.partitioned,
  });
  if (values.parquet) await packAsParquet(values.out);
  return 0;
}

function wholeNumber(name: string, text: string | undefined): number {
  const number = Number(text);
  if (!Number.isInteger(number) || number < 1)
    throw new UnusableArguments(`${name} requires a whole number from 1, got '${text ?? ''}'`);
  return number;
}

await runMain(main, usage);
