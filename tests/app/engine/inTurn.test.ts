import { expect, it } from 'vitest';
import { inTurn } from '../../../app/engine/inTurn';

/** Resolves once every microtask that is there or comes of one is done, and long before a next task. */
async function endOfTask(): Promise<void> {
  for (let count = 0; count < 100; count++) await null;
}

it('does one work a task, in the order given, whatever becomes of those before', async () => {
  const done: string[] = [];
  const work = (name: string) => () => {
    done.push(name);
    void endOfTask().then(() => done.push('|'));
    if (name === 'b') throw new Error('cannot be drawn');
    return name;
  };
  const all = await Promise.allSettled(['a', 'b', 'c'].map((name) => inTurn(work(name))));
  expect(all.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
  expect(await inTurn(async () => 'later')).toBe('later');
  expect(done.join('')).toBe('a|b|c|');
});
