import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { MeaningDecision } from '../../../lib/records/decisions/Decision';
import { meaningDecision } from '../../../lib/records/decisions/meaningDecision';
import type { InputFile } from '../../../lib/records/importReport';
import { sheetShape } from '../../../lib/records/intake/sheetShape';
import type { Database } from '../../../lib/store/Connector';
import { importFiles } from '../../../lib/store/importFiles';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { textFile } from '../../support/textFile';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const names = ['Kennung', 'Wann', 'Zähler', 'M1', 'M2', 'Notiz'];
/** No header says anything: only a person can know what was measured. */
const mute = textFile(
  'mute.csv',
  `${names.join(';')}
R-1;03.02.2016;8120;0,31;0,12;
R-1;21.05.2018;16900;0,35;0,14;Lager neu
R-2;14.07.2017;7900;0,28;0,11;`,
);
const again: InputFile = {
  name: 'later.csv',
  bytes: new TextEncoder().encode(
    `KENNUNG,Wann , Zähler,M1,M2,Notiz\nR-3,2019-04-02,9100,0.33,0.13,\nR-3,2021-06-01,17000,0.36,0.15,\n`,
  ),
};

type Said = Partial<Pick<MeaningDecision, 'characteristic' | 'stage' | 'clock' | 'uom'>>;
const say = (index: number, role: string, said: Said = {}) =>
  meaningDecision({
    file: 'mute.csv',
    shape: sheetShape(names),
    index,
    column: names[index] ?? '',
    role,
    characteristic: null,
    stage: null,
    clock: null,
    uom: null,
    ...said,
  });
const play = (index: number, stage: 'found' | 'left') =>
  say(index, 'reading', { characteristic: 'thrust_play', stage, uom: 'mm' });
const whole = [say(0, 'unit'), say(1, 'date'), say(2, 'unit_hours'), play(3, 'found'), play(4, 'left')];

async function imported(files: readonly InputFile[], decisions: readonly MeaningDecision[]) {
  const connector = await database.connect();
  const data = await importFiles(connector, files, async () => {}, { decisions });
  const rows = await connector.query(
    `SELECT concat_ws(' ', o.unit, CAST(o.date AS VARCHAR), CAST(o.unit_hours AS BIGINT), m.characteristic, m.stage, m.clock, CAST(CAST(m.value_mm AS DECIMAL(9, 3)) AS VARCHAR)) AS reading
     FROM readings_mm m JOIN readings r USING (id) JOIN overhauls o ON o.overhaul = m.overhaul ORDER BY 1`,
  );
  await connector.close();
  return { ...data, used: rows.map((row) => String(row.reading)) };
}

describe('meanings decided by a person', () => {
  test('make a sheet without a known header readable, and every later one of its shape', async () => {
    const before = await imported([mute], []);
    expect(before.readingsUsed).toBe(0);
    const sheet = before.sheets.get('mute.csv');
    expect(sheet?.names).toEqual(names);
    expect(sheet?.samples.slice(0, 4)).toEqual([
      ['R-1', 'R-2'],
      ['03.02.2016', '21.05.2018', '14.07.2017'],
      ['8120', '16900', '7900'],
      ['0,31', '0,35', '0,28'],
    ]);
    expect(sheet?.reason).toContain('no column for');

    const after = await imported([mute, again], whole);
    expect(after.used).toEqual([
      'R-1 2016-02-03 8120 thrust_play found 0.310',
      'R-1 2016-02-03 8120 thrust_play left 0.120',
      'R-1 2018-05-21 16900 thrust_play found 0.350',
      'R-1 2018-05-21 16900 thrust_play left 0.140',
      'R-2 2017-07-14 7900 thrust_play found 0.280',
      'R-2 2017-07-14 7900 thrust_play left 0.110',
      'R-3 2019-04-02 9100 thrust_play found 0.330',
      'R-3 2019-04-02 9100 thrust_play left 0.130',
      'R-3 2021-06-01 17000 thrust_play found 0.360',
      'R-3 2021-06-01 17000 thrust_play left 0.150',
    ]);
    const read = after.sheets
      .get('later.csv')
      ?.columns.map(({ role, evidence, sureness }) => [role, evidence, sureness]);
    expect(read?.[1]).toEqual(['date', 'said by you on mute.csv', 1]);
    expect(after.sheets.get('later.csv')?.reason).toBeNull();
  });

  test('bring what the other columns show by themselves into use', async () => {
    // Only the reading is said: day and hours are told by their values, the unit by its returning serials.
    const { used, sheets } = await imported([mute], [play(3, 'found')]);
    expect(
      sheets
        .get('mute.csv')
        ?.columns.map(({ role }) => role)
        .slice(0, 4),
    ).toEqual(['unit', 'date', 'unit_hours', 'reading']);
    expect(used).toHaveLength(3);
  });

  test('say nothing to a sheet of another shape', async () => {
    const other = textFile('other.csv', 'Kennung;Wann;Zähler;M1;M2\nR-1;03.02.2016;8120;0,31;0,12');
    expect((await imported([other], whole)).readingsUsed).toBe(0);
  });

  test('take a role from the column that was guessed to have it', async () => {
    const sheet = textFile(
      'two-dates.csv',
      'serial,date,second date,hours,thrust play found (mm)\nR-1,2016-02-03,2016-02-09,8120,0.31',
    );
    const said = meaningDecision({
      ...say(2, 'date'),
      shape: sheetShape(['serial', 'date', 'second date', 'hours', 'thrust play found (mm)']),
      column: 'second date',
    });
    const { used, sheets } = await imported([sheet], [said]);
    expect(used).toEqual(['R-1 2016-02-09 8120 thrust_play found 0.310']);
    const first = sheets.get('two-dates.csv')?.columns[1];
    expect(first?.role).toBe('unused');
    expect(first?.evidence).toContain('but column "second date" is it, as said by you');
  });

  test('leave the viewing end open where left and right are as guessed', async () => {
    const columns = [
      'serial',
      'date',
      'hours',
      ...['top', 'right', 'bottom', 'left'].map((side) => `turbine tip clearance ${side} found (mm)`),
    ];
    const sheet = textFile('sides.csv', `${columns.join(',')}\nR-1,2016-02-03,8120,0.8,0.7,0.6,0.9`);
    const guessed = (await imported([sheet], [])).sheets.get('sides.csv');
    const right = guessed?.columns[4];
    expect(right?.viewingEndOpen).toBe(true);
    const shape = sheetShape(columns);
    const said = (clock: '3' | '9') =>
      meaningDecision({
        ...say(4, 'reading', { characteristic: 'tip_turbine', stage: 'found', clock, uom: 'mm' }),
        shape,
      });
    const kept = (await imported([sheet], [said('3')])).sheets.get('sides.csv')?.columns[4];
    expect([kept?.clock, kept?.viewingEndOpen]).toEqual(['3', true]);
    const turned = (await imported([sheet], [said('9')])).sheets.get('sides.csv')?.columns[4];
    expect([turned?.clock, turned?.viewingEndOpen]).toEqual(['9', false]);
  });

  test.each([
    ['two days', [...whole, say(5, 'date')], 'one column only can be read as date'],
    ['a reading of nothing', [...whole, say(5, 'reading')], '‘Notiz’: say which characteristic'],
    ['one reading twice', [...whole, play(5, 'left')], 'they are said to hold the same reading'],
    [
      'a clock position of one reading',
      [...whole, say(5, 'reading', { characteristic: 'runout', clock: '3' })],
      'has no clock position',
    ],
    [
      'no clock position of four',
      [...whole, say(5, 'reading', { characteristic: 'tip_turbine' })],
      'say at which this one was',
    ],
    [
      'a characteristic that nobody knows',
      [...whole, say(5, 'reading', { characteristic: 'wobble' })],
      'the characteristic ‘wobble’ is not known',
    ],
    ['a value of nothing', [...whole, say(5, 'value')], 'say which characteristic the value is of'],
    ['a role that is none', [...whole, say(5, 'crew')], 'is said to be ‘crew’'],
    [
      'a unit of measure that is none',
      [...whole, say(5, 'value', { uom: 'cm' })],
      'in ‘cm’, which is not known',
    ],
    ['a column that is not there', [...whole, say(77, 'unit')], '(column 78)'],
  ])('that cannot hold together are refused in words: %s', async (_, decisions, reason) => {
    const { files, readingsUsed, sheets } = await imported([mute], decisions);
    expect(readingsUsed).toBe(0);
    expect(files[0]?.message).toContain(reason);
    expect(files[0]?.message).not.toMatch(/undefined|null|NaN/);
    expect(sheets.get('mute.csv')?.faults.length).toBeGreaterThan(0);
  });
});
