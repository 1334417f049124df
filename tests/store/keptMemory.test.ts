import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';

/** Makes a copy of a table of 40 MB anew, time after time, and prints how many pages each time took from the system. */
const program = `
  import { openNodeDatabase } from './lib/store/nodeDatabase';
  const database = await openNodeDatabase({ threads: 1 });
  const connector = await database.connect();
  const columns = [2, 3, 4, 5, 6, 7].map((times) => times + ' * i AS times_' + times).join(', ');
  await connector.run('CREATE TABLE numbers AS SELECT i, i::VARCHAR AS name, NULL::VARCHAR AS none, ' + columns + ' FROM range(400000) t(i)');
  const taken = [];
  for (let time = 0; time < 8; time++) {
    const before = process.resourceUsage().minorPageFault;
    await connector.run('CREATE OR REPLACE TABLE copied AS FROM numbers');
    taken.push(process.resourceUsage().minorPageFault - before);
  }
  await database.close();
  console.log(JSON.stringify(taken));`;

// The engine brings its own allocator on Linux only.
it.runIf(process.platform === 'linux')(
  'tables that take the place of others take their memory too',
  () => {
    const words = ['--import', 'tsx', '--input-type=module', '--eval', program];
    // One thread, so that all tables are made by the same.
    const env = { ...process.env, UV_THREADPOOL_SIZE: '1' };
    const { stdout, stderr } = spawnSync(process.execPath, words, { env, encoding: 'utf8' });
    expect(stderr).toBe('');
    const taken: readonly number[] = JSON.parse(stdout);
    // The first two lie side by side while one replaces the other.
    expect(Math.max(...taken.slice(3))).toBeLessThan((taken[0] as number) / 4);
  },
  120_000,
);
