import { expect, it } from 'vitest';
import { inTurn } from '../../../app/engine/inTurn';

it('does one work a task, in the order given, whatever becomes of those before', async () => {
  const done: string[] = [];
  const endOfTask = () => setTimeout(() => done.push('|'));
  const work = (name: string) => () => {
    done.push(name);
    endOfTask();
    if (name === 'b') throw new Error('cannot be drawn');
    return name;
  };
  const all = await Promise.allSettled(['a', 'b', 'c'].map((name) => inTurn(work(name))));
  expect(all.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
  expect(await inTurn(async () => 'later')).toBe('later');
  const words = done.join('');
  expect(words.replaceAll('|', '')).toBe('abc');
  // Another task lies between any two of them.
  expect(words).toMatch(/^a\|+b\|+c\|*$/);
});
