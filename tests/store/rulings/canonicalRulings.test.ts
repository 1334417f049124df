import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { textFile } from '../../support/textFile';
import { importRuled, ruling } from './ruled';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const tables = [
  textFile('units.csv', 'unit,frame\nW-1,Wren'),
  textFile(
    'overhauls.csv',
    'overhaul,unit,date,unit_hours\nA,W-1,2015-01-01,0\nB,W-1,2016-06-01,9000\nC,W-1,2017-06-01,1400',
  ),
];
const readings = (...rows: readonly string[]) =>
  textFile('readings.csv', ['overhaul,characteristic,stage,clock,value,uom,lower,upper', ...rows].join('\n'));
const good = 'B,runout,found,,0.02,mm,,';
const goodUsed = 'readings.csv:2 W-1 2016-06-01 9000 runout found 0.02';
const run = (rows: readonly string[], ...rulings: ReturnType<typeof ruling>[]) =>
  importRuled(database, [...tables, readings(good, ...rows)], rulings);
const ofReadings = (lines: readonly string[]) => lines.filter((line) => line.startsWith('readings.csv'));

describe('an edit in a canonical file', () => {
  it('is read in place of the raw text, which stays on record', async () => {
    const { used, held, interpreted, files, notApplied } = await run(
      ['A,runout,left,,O.31,mm,,'],
      ruling('readings.csv:3:value', 'O.31', { edit: '0.31' }),
    );
    expect(used).toEqual([goodUsed, 'readings.csv:3 W-1 2015-01-01 0 runout left 0.31']);
    expect(ofReadings(held)).toEqual([]);
    expect(ofReadings(interpreted)).toEqual([
      'readings.csv:3:value | O.31 | read as ‘0.31’ in place of ‘O.31’: read on the card (AB)',
    ]);
    expect(files.at(-1)).toMatchObject({
      rowsIn: 2,
      rowsUsed: 2,
      rowsHeld: 0,
      readingsIn: 2,
      readingsUsed: 2,
    });
    expect(notApplied).toEqual([null]);
  });

  it.each([
    ['another decimal sign', 'A,runout,left,,O.31,mm,,', 'value', 'O.31', '0,31', 'runout left 0.31'],
    ['an empty cell', 'A,runout,left,,0.31,,,', 'uom', '', 'mm', 'runout left 0.31'],
    [
      'the ends of an interval',
      'A,runout,left,,,mm,0.33,0.29',
      'value',
      '0.33 to 0.29',
      '0.29 to 0.33',
      'runout left 0.31',
    ],
    ['one missing end', 'A,runout,left,,,mm,0.29,', 'value', '0.29', '0.29 to 0.33', 'runout left 0.31'],
    ['a quoted comma', 'A,runout,left,,"0,3l",mm,,', 'value', '0,3l', '0.31', 'runout left 0.31'],
    ['the name of the overhaul', 'AA,runout,left,,0.31,mm,,', 'overhaul', 'AA', 'A', 'runout left 0.31'],
  ])('takes %s', async (_, row, column, raw, text, used) => {
    const result = await run([row], ruling(`readings.csv:3:${column}`, raw, { edit: text }));
    expect(result.used).toEqual([goodUsed, `readings.csv:3 W-1 2015-01-01 0 ${used}`]);
  });

  it('of the key of a repeated row makes it a row of its own', async () => {
    const { used } = await run(
      ['B,runout,found,,0.03,mm,,'],
      ruling('readings.csv:3:overhaul', 'B / runout / found', { edit: 'B / runout / left' }),
    );
    expect(used).toEqual([goodUsed, 'readings.csv:3 W-1 2016-06-01 9000 runout left 0.03']);
  });

  it('is cut anew where the line could not be cut, by commas or as it is listed', async () => {
    const row = 'A,runout,left,,0,31,mm,,x';
    const raw = 'A | runout | left |  | 0 | 31 | mm |  | x';
    for (const text of ['A,runout,left,,0.31,mm,,', 'A | runout | left |  | 0.31 | mm |  | ']) {
      const { used, held, interpreted } = await run([row], ruling('readings.csv:3:', raw, { edit: text }));
      expect(used).toEqual([goodUsed, 'readings.csv:3 W-1 2015-01-01 0 runout left 0.31']);
      expect(ofReadings(held)).toEqual([]);
      expect(ofReadings(interpreted)).toEqual([
        `readings.csv:3: | ${raw} | the line is read as ‘${text}’: read on the card (AB)`,
      ]);
    }
  });

  it('to a text that cannot be read either goes on being held under the raw text of the file', async () => {
    const { used, held } = await run(
      ['A,runout,left,,O.31,mm,,'],
      ruling('readings.csv:3:value', 'O.31', { edit: '0.3l' }),
    );
    expect(used).toEqual([goodUsed]);
    expect(ofReadings(held)).toEqual([
      expect.stringMatching(/^readings.csv:3:value \| O\.31 \| read as ‘0\.3l’: not a number/),
    ]);
  });

  it.each([
    [
      'another raw text',
      'readings.csv:3:value',
      'O.32',
      'the edit to ‘0.3’ was not applied: the file has ‘O.31’ there, not ‘O.32’',
    ],
    [
      'no such line',
      'readings.csv:9:value',
      'O.31',
      'the edit to ‘0.3’ was not applied: there is no such cell that can be edited',
    ],
    [
      'no such column',
      'readings.csv:3:play',
      'O.31',
      'the edit to ‘0.3’ was not applied: there is no such cell that can be edited',
    ],
  ])('is listed as not applied with %s', async (_, place, raw, reason) => {
    const { used, held, interpreted, notApplied } = await run(
      ['A,runout,left,,O.31,mm,,'],
      ruling(place, raw, { edit: '0.3' }),
    );
    expect(used).toEqual([goodUsed]);
    expect(ofReadings(held)).toHaveLength(1);
    expect(interpreted).toContain(`${place} | ${raw} | ${reason}`);
    expect(notApplied).toEqual([reason.replace(/^.*applied: /, '')]);
  });
});

it('a ruling about a file that is not open waits for it and is not listed', async () => {
  const { interpreted, notApplied } = await run([], ruling('reading.csv:3:value', 'O.31', { edit: '0.3' }));
  expect(interpreted.filter((line) => line.includes('not applied'))).toEqual([]);
  expect(notApplied).toEqual(['no file of that name is open']);
});

describe('a release in a canonical file', () => {
  it('uses hours out of order as they stand, and the readings with them', async () => {
    const rows = ['C,runout,found,,0.03,mm,,'];
    const before = await run(rows);
    expect(before.problems.find(({ column }) => column === 'unit_hours')).toMatchObject({
      raw: '1400',
      releasable: true,
    });
    const { used, held, interpreted } = await run(
      rows,
      ruling('overhauls.csv:4:unit_hours', '1400', 'release'),
    );
    expect(before.used).toEqual([goodUsed]);
    expect(used).toEqual([goodUsed, 'readings.csv:3 W-1 2017-06-01 1400 runout found 0.03']);
    expect(held).toEqual([]);
    expect(interpreted).toContainEqual(
      expect.stringMatching(
        /^overhauls.csv:4:unit_hours \| 1400 \| used as it stands: read on the card \(AB\)\. In doubt: the hours do not rise/,
      ),
    );
  });

  it('uses a single reading taken twice, but no second reading of a clock position and no second overhaul', async () => {
    const twice = await run(
      ['B,runout,found,,0.03,mm,,'],
      ruling('readings.csv:3:overhaul', 'B / runout / found', 'release'),
    );
    expect(twice.used).toEqual([goodUsed, 'readings.csv:3 W-1 2016-06-01 9000 runout found 0.03']);
    const clock = ['3', '6', '9', '9'].map((at) => `B,tip_turbine,found,${at},0.6,mm,,`);
    const { used, held, problems, notApplied } = await run(
      clock,
      ruling('readings.csv:6:overhaul', 'B / tip_turbine / found / 9', 'release'),
    );
    expect(used).toHaveLength(4);
    expect(ofReadings(held)).toHaveLength(1);
    expect(problems.some(({ file, releasable }) => file === 'readings.csv' && releasable)).toBe(false);
    expect(notApplied).toEqual([
      'what holds it is no doubt that could be set aside: edit it or leave it out',
    ]);
  });

  it('is not applied to what cannot be read, nor where nothing is held', async () => {
    const { used, interpreted, notApplied } = await run(
      ['A,runout,left,,O.31,mm,,'],
      ruling('readings.csv:3:value', 'O.31', 'release'),
      ruling('readings.csv:2:value', '0.02', 'release'),
    );
    expect(used).toEqual([goodUsed]);
    expect(notApplied).toEqual([
      'nothing is held there',
      'what holds it is no doubt that could be set aside: edit it or leave it out',
    ]);
    expect(interpreted.filter((line) => line.includes('was not applied'))).toHaveLength(2);
  });
});

describe('what is left out of a canonical file', () => {
  it('stays held and says so, with reason and initials', async () => {
    const { used, held, files, notApplied } = await run(
      ['A,runout,left,,O.31,mm,,'],
      ruling('readings.csv:3:value', 'O.31', 'leave out'),
    );
    expect(used).toEqual([goodUsed]);
    expect(ofReadings(held)).toEqual([
      expect.stringMatching(
        /^readings.csv:3:value \| O\.31 \| left out: read on the card \(AB\)\. Held because: not a number/,
      ),
    ]);
    expect(files.at(-1)).toMatchObject({ rowsIn: 2, rowsUsed: 1, rowsHeld: 1, readingsHeld: 1 });
    expect(notApplied).toEqual([null]);
  });

  it('stays out when what held it is gone: a repeated row whose first is left out as well', async () => {
    const rows = ['B,runout,found,,0.03,mm,,'];
    const second = ruling('readings.csv:3:overhaul', 'B / runout / found', 'leave out');
    expect((await run(rows, second)).used).toEqual([goodUsed]);
    const both = await run(rows, second, ruling('readings.csv:2:overhaul', 'B', 'leave out'));
    expect(both.used).toEqual([]);
    expect(ofReadings(both.held)).toEqual([
      'readings.csv:2:overhaul | B | left out: read on the card (AB)',
      'readings.csv:3:overhaul | B / runout / found | left out: read on the card (AB)',
    ]);
  });

  it('counts a line that could not be cut', async () => {
    const { held } = await run(
      ['A,runout,left,,0,31,mm,,x'],
      ruling('readings.csv:3:', 'A | runout | left |  | 0 | 31 | mm |  | x', 'leave out'),
    );
    expect(ofReadings(held)).toEqual([
      expect.stringContaining('left out: read on the card (AB). Held because: the line has 9 cells'),
    ]);
  });
});

it('a ruling taken back leaves no trace', async () => {
  const rows = ['A,runout,left,,O.31,mm,,', 'C,runout,found,,0.03,mm,,'];
  const before = await run(rows);
  await run(
    rows,
    ruling('readings.csv:3:value', 'O.31', { edit: '0.31' }),
    ruling('overhauls.csv:4:unit_hours', '1400', 'release'),
  );
  expect(await run(rows)).toEqual(before);
});
