import { describe, expect, it } from 'vitest';
import { textFile } from '../support/textFile';
import { withRecords } from '../support/withRecords';

const header = 'overhaul,characteristic,stage,clock,value,uom';
const lines = 150_000;
const known = 'X,thrust_play,left,,0.25,mm';

/** A file of two pieces whose rows name their own line in overhauls that are nowhere else. */
function longFile(name: string, letter: string, replaced: Readonly<Record<number, string>>) {
  const rows = Array.from(
    { length: lines },
    (_, index) => replaced[index + 2] ?? `${letter}${index + 2},thrust_play,left,,0.25,mm`,
  );
  return textFile(name, `${header}\n${rows.join('\n')}`);
}

describe('files of many rows', () => {
  it('keep the line of every row and the order of their rows, whichever pieces they are read in', async () => {
    const files = [
      textFile('overhauls.csv', 'overhaul,unit,date,unit_hours\nX,W-1,2015-01-01,0'),
      longFile('one.csv', 'K', {
        60000: known,
        140000: '',
        140001: '"K140001",thrust_play,left,,0.25,mm',
      }),
      longFile('two.csv', 'L', { 5: '"L5', 149000: known }),
    ];
    await withRecords(files, async (connector, imported) => {
      const [all] =
        await connector.query(`SELECT count(*)::INTEGER AS n, count(*) FILTER (raw[2:] <> CAST(line AS VARCHAR))::INTEGER AS misplaced
        FROM problems WHERE column_name = 'overhaul' AND reason LIKE 'no overhaul%'`);
      // Two rows are of an overhaul that is there, one line is blank and one cannot be cut.
      expect(all).toEqual({ n: 2 * lines - 4, misplaced: 0 });
      expect(imported.problems.filter(({ reason }) => reason.includes('repetition'))).toMatchObject([
        { file: 'two.csv', row: 149_000, reason: 'exact repetition of line 60000 of one.csv' },
      ]);
      expect(
        imported.files.map(({ readingsIn, readingsUsed, readingsHeld }) => [
          readingsIn,
          readingsUsed,
          readingsHeld,
        ]),
      ).toEqual([
        [0, 0, 0],
        [lines - 1, 1, lines - 2],
        [lines, 0, lines],
      ]);
    });
  });
});

describe('the characteristics that a file adds', () => {
  it('are known whatever the file is called and wherever it stands among the files', async () => {
    const files = [
      textFile('overhauls.csv', 'overhaul,unit,date,unit_hours\nX,W-1,2015-01-01,0'),
      textFile(
        'readings.csv',
        `${header}\nX,wobble,left,,0.25,mm\nX,other,left,,0.25,mm\nX,third,left,,0.25,mm`,
      ),
      textFile('own codes.csv', 'characteristic,name,shape,never_negative\nwobble,Wobble,single,yes'),
    ];
    await withRecords(files, async (connector, imported) => {
      const used = await connector.query('SELECT CAST(characteristic AS VARCHAR) AS code FROM readings');
      expect(used).toEqual([{ code: 'wobble' }]);
      const held = imported.problems.filter(({ action }) => action === 'held');
      expect(held.map(({ row, raw }) => [row, raw])).toEqual([
        [3, 'other'],
        [4, 'third'],
      ]);
    });
  });
});
