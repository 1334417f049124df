import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Decision } from '../../../lib/records/decisions/Decision';
import { rulingId } from '../../../lib/records/decisions/rulings';
import { withFileNamed } from '../../../lib/records/decisions/withFileNamed';
import { questionId } from '../../../lib/records/intake/Answers';
import { mergeFiles } from '../../../lib/records/workspace/mergeFiles';

const file = (name: string, content: string) => ({ name, bytes: new TextEncoder().encode(content) });

it('the same content is one file under our name, another content of one name gets a number', async () => {
  const ours = [
    file('a.csv', 'one'),
    file('b.csv', 'two'),
    file('b (2).csv', 'three'),
    file('copy.csv', 'two'),
  ];
  const theirs = [
    file('b.csv', 'four'),
    file('x.csv', 'one'),
    file('copy.csv', 'two'),
    file('notes', 'five'),
  ];
  const { files, names, added } = await mergeFiles(ours, theirs);
  expect(files.map(({ name }) => name)).toEqual([
    'a.csv',
    'b.csv',
    'b (2).csv',
    'copy.csv',
    'b (3).csv',
    'notes',
  ]);
  expect(added).toEqual(['b (3).csv', 'notes']);
  expect([...names]).toEqual([
    ['b.csv', 'b (3).csv'],
    ['x.csv', 'a.csv'],
    ['copy.csv', 'copy.csv'],
    ['notes', 'notes'],
  ]);
});

it('no content is lost, no name stands twice, and every name of theirs leads to its content', async () => {
  const few = fc.uniqueArray(
    fc.record({
      name: fc.constantFrom('a.csv', 'a (2).csv', 'b', 'c/a.csv'),
      content: fc.constantFrom('1', '2', '3'),
    }),
    { selector: ({ name }) => name, maxLength: 4 },
  );
  await fc.assert(
    fc.asyncProperty(few, few, async (ours, theirs) => {
      const text = ({ bytes }: { bytes: Uint8Array }) => new TextDecoder().decode(bytes);
      const merged = await mergeFiles(
        ours.map(({ name, content }) => file(name, content)),
        theirs.map(({ name, content }) => file(name, content)),
      );
      const byName = new Map(merged.files.map((one) => [one.name, text(one)]));
      expect(byName.size).toBe(merged.files.length);
      for (const { name, content } of ours) expect(byName.get(name)).toBe(content);
      for (const { name, content } of theirs) expect(byName.get(merged.names.get(name) ?? '')).toBe(content);
    }),
    { numRuns: 200 },
  );
});

it('a decision follows its file to the new name, and so does its id', () => {
  const nameOf = (name: string) => (name === 'b.csv' ? 'b (2).csv' : name);
  const ruling: Decision = {
    kind: 'ruling',
    id: rulingId({ file: 'b.csv', line: 3, column: 'value' }),
    file: 'b.csv',
    line: 3,
    column: 'value',
    raw: 'O.2',
    ruling: 'edit',
    text: '0.2',
    reason: 'typing',
    by: '',
  };
  expect(withFileNamed(ruling, nameOf)).toEqual({
    ...ruling,
    file: 'b (2).csv',
    id: rulingId({ file: 'b (2).csv', line: 3, column: 'value' }),
  });
  const answer: Decision = {
    kind: 'answer',
    id: questionId('unit of measure', 'b.csv', 'Spiel', 'all'),
    file: 'b.csv',
    column: 'Spiel',
    question: 'Which unit?',
    answer: 'mm',
  };
  expect(withFileNamed(answer, nameOf).id).toBe(questionId('unit of measure', 'b (2).csv', 'Spiel', 'all'));
  expect(withFileNamed(answer, (name) => name)).toBe(answer);
});
