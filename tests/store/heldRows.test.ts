import { describe, expect, it } from 'vitest';
import { textFile } from '../support/textFile';
import { filesOf, withRecords } from '../support/withRecords';

const base = [
  textFile('units.csv', 'unit,frame\nW-1,Wren'),
  textFile('overhauls.csv', 'overhaul,unit,date,unit_hours\nA,W-1,2015-01-01,0\nB,W-1,2016-06-01,9000'),
];
const readingsHeader = 'overhaul,characteristic,stage,clock,value,uom,lower,upper';

describe('a reading row that cannot be used is held with line, column, raw text and reason', () => {
  it.each([
    ['A,thrust_play,left,,0.3l,mm,,', 'value', '0.3l', 'not a number'],
    ['A,thrust_play,left,,"0,31",mm,,', 'value', '0,31', 'not a number'],
    ['A,thrust_play,left,,=0.31,mm,,', 'value', '=0.31', 'not a number'],
    ['A,thrust_play,left,,nan,mm,,', 'value', 'nan', 'not a number'],
    ['A,thrust_play,left,,1e999,mm,,', 'value', '1e999', 'outside -100000 to 100000'],
    ['A,thrust_play,left,,0.31,cm,,', 'uom', 'cm', 'not one of'],
    ['A,thrust_play,left,,0.31,,,', 'uom', '', 'the cell is empty'],
    ['A,thrust_play,before,,0.31,mm,,', 'stage', 'before', 'not one of'],
    ['A,thrust_play,left,3,0.31,mm,,', 'value', '0.31', 'clock position is given'],
    ['A,tip_turbine,left,,0.31,mm,,', 'value', '0.31', 'clock position is missing'],
    ['A,tip_turbine,left,4,0.31,mm,,', 'clock', '4', 'not one of'],
    ['A,tip_turbine,left,3,0.31,mm,,', 'value', '0.31', 'only 1 of 4 clock positions'],
    ['A,runout,left,,-0.01,mm,,', 'value', '-0.01', 'negative'],
    ['A,wobble,left,,0.31,mm,,', 'characteristic', 'wobble', 'unknown characteristic'],
    ['X,runout,left,,0.31,mm,,', 'overhaul', 'X', 'no overhaul of that name'],
    [',runout,left,,0.31,mm,,', 'overhaul', '', 'the cell is empty'],
    ['A,runout,left,,,mm,,', 'value', '', 'no value'],
    ['A,runout,left,,,mm,0.02,', 'value', '0.02', 'both lower and upper'],
    ['A,runout,left,,,mm,0.03,0.02', 'value', '0.03 to 0.02', 'lower is above upper'],
    ['A,runout,left,,0.05,mm,0.01,0.02', 'value', '0.05 to 0.01 to 0.02', 'outside lower and upper'],
    [
      'A,runout,left,,0.02,mm,,,surplus',
      '',
      'A | runout | left |  | 0.02 | mm |  |  | surplus',
      '9 cells where the header has 8',
    ],
  ])('%s', async (row, column, raw, reason) => {
    const file = textFile('readings.csv', `${readingsHeader}\nB,runout,found,,0.02,mm,,\n${row}`);
    await withRecords([...base, file], async (_, imported) => {
      const held = imported.problems.filter((problem) => problem.action === 'held');
      expect(held).toEqual([
        {
          file: 'readings.csv',
          row: 3,
          column,
          raw,
          reason: expect.stringContaining(reason),
          action: 'held',
        },
      ]);
      expect(imported.files.at(-1)).toMatchObject({
        rowsIn: 2,
        rowsUsed: 1,
        rowsHeld: 1,
        readingsIn: 2,
        readingsUsed: 1,
        readingsHeld: 1,
      });
    });
  });

  it('nut stand-out may be negative, and every uom comes out in mm', async () => {
    const file = textFile(
      'readings.csv',
      `${readingsHeader}
A,nut_stand_out,left,,-0.25,mm,,
B,nut_stand_out,left,,12,um,,
A,runout,left,,0.001,in,,
B,runout,left,,2,mil,,
B,thrust_play,left,,21,0.01mm,,`,
    );
    await withRecords([...base, file], async (connector) => {
      const rows = await connector.query('SELECT value_mm::DOUBLE AS value FROM readings_mm ORDER BY line');
      for (const [index, expected] of [-0.25, 0.012, 0.0254, 0.0508, 0.21].entries()) {
        expect(rows[index]?.value).toBeCloseTo(expected, 12);
      }
    });
  });

  it('an interval reading counts as its midpoint with (upper - lower)^2 / 12', async () => {
    const file = textFile('readings.csv', `${readingsHeader}\nA,thrust_play,left,,,0.01mm,20,26`);
    await withRecords([...base, file], async (connector) => {
      const [row] = await connector.query(
        'SELECT value_mm::DOUBLE AS value, interval_variance::DOUBLE AS variance FROM readings_mm',
      );
      expect(row?.value).toBeCloseTo(0.23, 12);
      expect(row?.variance).toBeCloseTo(0.06 ** 2 / 12, 12);
    });
  });
});

describe('a repeated or doubtful table row', () => {
  it('an exact repetition and a contradiction are told apart, and the first is kept', async () => {
    const file = textFile(
      'readings.csv',
      `${readingsHeader}
A,runout,left,,0.02,mm,,
A,runout,left,,0.02,mm,,
A,runout,left,,0.03,mm,,`,
    );
    await withRecords([...base, file], async (_, imported) => {
      expect(imported.problems.map((problem) => [problem.row, problem.reason])).toEqual([
        [3, 'exact repetition of line 2 of readings.csv'],
        [4, 'given already with other values in line 2 of readings.csv'],
      ]);
      expect(imported.readingsUsed).toBe(1);
    });
  });

  it('hours that fall hold the overhaul and what was read at it', async () => {
    const overhauls = textFile(
      'overhauls.csv',
      'overhaul,unit,date,unit_hours\nA,W-1,2015-01-01,9840\nB,W-1,2016-06-01,0',
    );
    const readings = textFile(
      'readings.csv',
      `${readingsHeader}\nB,runout,left,,0.02,mm,,\nA,runout,left,,0.02,mm,,`,
    );
    await withRecords(
      [textFile('units.csv', 'unit,frame\nW-1,Wren'), overhauls, readings],
      async (_, imported) => {
        expect(
          imported.problems.map((problem) => [problem.file, problem.row, problem.column, problem.raw]),
        ).toEqual([
          ['overhauls.csv', 3, 'unit_hours', '0'],
          ['readings.csv', 2, 'value', '0.02'],
        ]);
        expect(imported.problems[0]?.reason).toContain('(9840 h before it)');
      },
    );
  });

  it('a unit that units.csv does not list is held; without units.csv it is taken in and said', async () => {
    const overhauls = textFile('overhauls.csv', 'overhaul,unit,date,unit_hours\nA,W-l,2015-01-01,0');
    const readings = textFile('readings.csv', `${readingsHeader}\nA,runout,left,,0.02,mm,,`);
    await withRecords(
      [textFile('units.csv', 'unit,frame\nW-1,Wren'), overhauls, readings],
      async (_, imported) => {
        expect(imported.problems[0]).toMatchObject({
          raw: 'W-l',
          reason: expect.stringContaining('no unit of that name'),
          action: 'held',
        });
        expect(imported.readingsUsed).toBe(0);
      },
    );
    await withRecords([overhauls, readings], async (_, imported) => {
      expect(imported.problems[0]).toMatchObject({ raw: 'W-l', action: 'interpreted' });
      expect(imported.readingsUsed).toBe(1);
    });
  });

  it('a limit that cannot be read is held, the rest of the table used', async () => {
    const limits = textFile(
      'limits.csv',
      'frame,series,limit_kind,limit\nWren,runout,upper,0.06\nWren,thrust_play,above,0.45\nWren,thrust_play,upper,"0,45"',
    );
    await withRecords([...base, limits], async (_, imported) => {
      expect(imported.files.at(-1)).toMatchObject({ rowsIn: 3, rowsUsed: 1, rowsHeld: 2 });
      expect(imported.problems.map((problem) => [problem.row, problem.column])).toEqual([
        [3, 'limit_kind'],
        [4, 'limit'],
      ]);
    });
  });
});

describe.each(['data/demo', 'data/examples'])('rows in = rows used + rows held in %s', (folder) => {
  it('counted independently from the list of held rows', async () => {
    const files = filesOf(folder);
    await withRecords(files, async (_, imported) => {
      for (const file of imported.files) {
        const text = new TextDecoder().decode(files.find((candidate) => candidate.name === file.file)?.bytes);
        const lines = text.trim().split('\n').length - 1;
        expect(file.rowsIn, file.file).toBe(lines);
        if (file.table === 'one row an overhaul') continue;
        const held = new Set(
          imported.problems.filter((p) => p.file === file.file && p.action === 'held').map((p) => p.row),
        );
        expect(file.rowsHeld, file.file).toBe(held.size);
        expect(file.rowsUsed + held.size, file.file).toBe(lines);
      }
    });
  });
});
