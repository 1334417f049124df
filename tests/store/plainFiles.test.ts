import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { InputFile } from '../../lib/records/importReport';
import { textFile } from '../support/textFile';
import { withRecords } from '../support/withRecords';

const header = 'overhaul,characteristic,stage,clock,value,uom';
const opening = [
  textFile('overhauls.csv', 'overhaul,unit,date,unit_hours\nX,W-1,2015-01-01,0'),
  textFile('units.csv', 'unit,frame\nW-1,Lark'),
];

/** A file of readings whose overhauls, which are nowhere else, name their own file and line; quoted cells must be cut by ourselves. */
function ownReadings(name: string, rows: number, isQuoted: boolean): InputFile {
  const lines = Array.from({ length: rows }, (_, row) => {
    const overhaul = `${name}:${row + 2}`;
    return `${isQuoted ? `"${overhaul}"` : overhaul},runout,left,,0.02,mm`;
  });
  return textFile(name, `${header}\n${lines.join('\n')}`);
}

it('files that are read together keep the file and line of every row, and their order, whatever lies between them', async () => {
  const shape = fc.record({ rows: fc.integer({ min: 1, max: 40 }), isQuoted: fc.boolean() });
  await fc.assert(
    fc.asyncProperty(fc.array(shape, { minLength: 2, maxLength: 6 }), async (shapes) => {
      const files = shapes.map(({ rows, isQuoted }, place) =>
        ownReadings(`file-${place}.csv`, rows, isQuoted),
      );
      await withRecords([...opening, ...files], async (_, imported) => {
        const wanted = shapes.flatMap(({ rows }, place) =>
          Array.from({ length: rows }, (_, row) => `file-${place}.csv:${row + 2}`),
        );
        expect(imported.problems.map(({ file, row }) => `${file}:${row}`)).toEqual(wanted);
        expect(imported.problems.map(({ raw }) => raw)).toEqual(wanted);
        expect(imported.files.slice(opening.length).map(({ readingsIn }) => readingsIn)).toEqual(
          shapes.map(({ rows }) => rows),
        );
      });
    }),
    { numRuns: 6, seed: 4 },
  );
}, 300_000);

it('the reading of the earlier file is the first one, also where a file that is cut by ourselves stands between them', async () => {
  const reading = (name: string, value: string) =>
    textFile(name, `${header}\nX,runout,left,,${value},mm\nX,thrust_play,left,,0.25,mm`);
  const files = [...opening, reading('a.csv', '0.02'), reading('b.csv', '"0.03"'), reading('c.csv', '0.04')];
  await withRecords(files, async (connector, { problems }) => {
    expect(problems.map(({ file, row, reason }) => `${file}:${row} ${reason}`)).toEqual([
      'b.csv:2 given already with other values in line 2 of a.csv',
      'b.csv:3 exact repetition of line 3 of a.csv',
      'c.csv:2 given already with other values in line 2 of a.csv',
      'c.csv:3 exact repetition of line 3 of a.csv',
    ]);
    const ids = await connector.query('SELECT id::INTEGER AS id FROM readings');
    expect(new Set(ids.map(({ id }) => id)).size).toBe(2);
  });
});

it('other tables keep file and line as well', async () => {
  const units = (name: string, lines: string) => textFile(name, `unit,frame\n${lines}`);
  const files = [units('a.csv', 'W-1,Lark\nW-2,Lark'), units('b.csv', 'W-3,Lark\nW-1,Heron')];
  await withRecords(files, async (_, { problems }) => {
    expect(problems.map(({ file, row, reason }) => [file, row, reason])).toEqual([
      ['b.csv', 3, 'given already with other values in line 2 of a.csv'],
    ]);
  });
});
