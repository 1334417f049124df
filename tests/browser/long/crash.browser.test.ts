import { join } from 'node:path';
import { expect, it } from 'vitest';
import { crashRounds } from '../../support/crash/crashRounds';

it('whatever moment the tab or the browser is killed at, what was acknowledged is there and nothing is half done', async () => {
  const told: string[] = [];
  const root = join(process.cwd(), 'out');
  const result = await crashRounds({ root, rounds: 4, seed: 7 }, (sentence) => told.push(sentence));
  expect(result.faults, told.join('\n')).toEqual([]);
  expect(result.rounds).toBe(4);
  expect(result.killed.browser).toBeGreaterThan(0);
  expect(result.killed.tab).toBeGreaterThan(0);
  expect(result.acknowledged).toBeGreaterThan(0);
}, 900_000);
