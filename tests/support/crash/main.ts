import { join } from 'node:path';
import { crashRounds } from './crashRounds';

/** Crashes by hand: `npm run -s crash -- [rounds] [seed]`; the site must be built. */
const [rounds = '200', seed = '1'] = process.argv.slice(2);
crashRounds({ root: join(process.cwd(), 'out'), rounds: Number(rounds), seed: Number(seed) }, (sentence) =>
  process.stdout.write(`${sentence}\n`),
).then(
  (result) => {
    process.stdout.write(`${JSON.stringify(result, null, 2)}\n`);
    process.exitCode = result.faults.length === 0 && result.rounds === Number(rounds) ? 0 : 1;
  },
  (error: unknown) => {
    process.stderr.write(`${error instanceof Error ? error.stack : error}\n`);
    process.exitCode = 1;
  },
);
