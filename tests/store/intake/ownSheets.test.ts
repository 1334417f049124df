import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Answers } from '../../../lib/records/intake/Answers';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { answering } from './importSheets';
import { filledCells, importOwn, readings, sorted } from './ownSheet';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const imported = (name: string, answers?: Answers) => importOwn(database, name, answers);

describe('01: two header rows, windows-1252', () => {
  const name = '01-two-header-rows-latin1.csv';
  it('reads comma decimals, German words and clock positions; holds the day that is none', async () => {
    const sheet = await imported(name);
    expect(sheet.used).toEqual(
      sorted(
        readings('P-6101 2016-05-07 11240.0', {
          'thrust_play found': 0.26,
          'runout found': 0.015,
          'tip_turbine found 12': 0.88,
          'tip_turbine found 3': 0.81,
          'tip_turbine found 6': 0.79,
          'tip_turbine found 9': 0.84,
          'thrust_play left': 0.15,
          'runout left': 0.005,
          'tip_turbine left 12': 0.86,
          'tip_turbine left 3': 0.82,
          'tip_turbine left 6': 0.8,
          'tip_turbine left 9': 0.85,
        }),
        readings('P-6101 2017-10-19 22015.0', {
          'thrust_play found': 0.24,
          'runout found': 0.02,
          'tip_turbine found 12': 0.9,
          'tip_turbine found 3': 0.83,
          'tip_turbine found 6': 0.78,
          'tip_turbine found 9': 0.85,
          'thrust_play left': 0.16,
          'runout left': 0.01,
          'tip_turbine left 12': 0.87,
          'tip_turbine left 3': 0.83,
          'tip_turbine left 6': 0.81,
          'tip_turbine left 9': 0.84,
        }),
        readings('P-6104 2016-06-23 10985.0', {
          'thrust_play found': 0.28,
          'runout found': 0.02,
          'tip_turbine found 12': 0.91,
          'tip_turbine found 6': 0.8,
          'tip_turbine found 9': 0.86,
          'thrust_play left': 0.17,
          'tip_turbine left 12': 0.88,
          'tip_turbine left 3': 0.84,
          'tip_turbine left 6': 0.82,
          'tip_turbine left 9': 0.85,
        }),
      ),
    );
    expect(sheet.held).toEqual([
      '6 | 12 readings of a held overhaul',
      '6 | Datum | 30.02.2018 | day 30 of month 2 of 2018 is no day of the calendar',
    ]);
    expect(sheet.interpreted).toContain(
      '7 |  | Mittelwert | 0,26 | 0,02 | 0,16 | 0,01 | a totals line: not an overhaul',
    );
    expect(sheet.interpreted).toContain(
      '3 | Betriebsstd. | 11.240 | thousands point taken out (and 3 more in this column)',
    );
    expect(sheet.interpreted).toContain(
      '3 | Vor Demontage / Axialspiel | 0,26 | no unit of measure is stated; the sizes leave only mm (and 3 more in this column)',
    );
    expect(sheet.questions).toEqual([]);
    expect(sheet.message).toContain("'Werft Süd' in the first cell of line 1 is read as the sheet's title");
    const columns = [4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15];
    const cells = filledCells(name, {
      encoding: 'windows-1252',
      delimiter: ';',
      headerRows: 2,
      columns,
      without: /^Mittelwert/,
    });
    expect(sheet.counts).toEqual([cells, 34, 0, 12]);
  });
});

describe('02: one row a reading, hundredths of a millimetre', () => {
  const name = '02-long-hundredths.csv';
  const cells = () => filledCells(name, { encoding: 'utf-8', delimiter: ',', headerRows: 1, columns: [6] });
  const withoutQuestions = sorted(
    readings('P-6110 2018-03-04 8720.0', {
      'thrust_play found': 0.19,
      'runout found': 0.015,
      'thrust_play left': 0.11,
      'runout left': 0.01,
    }),
    readings('P-6110 2019-11-16 18340.0', { 'runout left': 0.01 }),
  );
  const fallen = [
    '10 | 1 readings of a held overhaul',
    '10 | op hours | 12 | the hours do not rise with the dates of the unit’s other overhauls (18340 h before it): check hours and date',
  ];

  it('asks for the viewing end and for two slips of scale, and holds what waits', async () => {
    const sheet = await imported(name);
    expect(sheet.used).toEqual(withoutQuestions);
    const few = 'only 2 of 4 clock positions: three are needed for the mean and the offset';
    const side = 'waits for an answer: left and right seen from which end';
    const scale = 'waits for an answer: out of scale against the other readings, by the look of it';
    expect(sheet.held.map((line) => line.replace('| unit_hours |', '| op hours |'))).toEqual([
      `4 | reading [1/100 mm] | 83 | ${few}`,
      `5 | clock pos | right | ${side}`,
      `6 | reading [1/100 mm] | 74 | ${few}`,
      `7 | clock pos | left | ${side}`,
      ...fallen,
      `11 | reading [1/100 mm] | 1.8 | ${scale} times 10`,
      `12 | reading [1/100 mm] | 0.12 | ${scale} times 100`,
    ]);
    expect(sheet.questions).toEqual([
      'clock pos | Left and right: seen from which end? The right side seen from the compressor end is 3 o’clock. | compressor end/turbine end | 2',
      'reading [1/100 mm] | ‘1.8’ in line 11: out of scale against the other readings of thrust play. What is right? | as written/times 10 | 1',
      'reading [1/100 mm] | ‘0.12’ in line 12: out of scale against the other readings of thrust play. What is right? | as written/times 100 | 1',
    ]);
    expect(sheet.counts).toEqual([cells(), 5, 0, 7]);
  });

  it.each([
    ['compressor end', 0.77, 0.8],
    ['turbine end', 0.8, 0.77],
  ])(
    'seen from the %s, right is put where it belongs, and slips are settled as answered',
    async (end, at3, at9) => {
      const answers = answering({ 'viewing end': end, '‘1.8’': 'times 10', '‘0.12’': 'as written' });
      const sheet = await imported(name, answers);
      expect(sheet.used).toEqual(
        sorted(
          withoutQuestions,
          readings('P-6110 2018-03-04 8720.0', {
            'tip_turbine found 12': 0.83,
            'tip_turbine found 3': at3,
            'tip_turbine found 6': 0.74,
            'tip_turbine found 9': at9,
          }),
          readings('P-6110 2019-11-16 18340.0', { 'thrust_play found': 0.18, 'thrust_play left': 0.0012 }),
        ),
      );
      expect(sheet.held).toHaveLength(fallen.length);
      expect(sheet.questions).toEqual([]);
      expect(sheet.interpreted).toContain('11 | reading [1/100 mm] | 1.8 | taken times 10, as answered');
      expect(sheet.counts).toEqual([cells(), 11, 0, 1]);
    },
  );
});

describe('03: texts in cells, byte order mark', () => {
  const name = '03-text-in-cells.csv';
  const cells = () =>
    filledCells(name, { encoding: 'utf-8', delimiter: ',', headerRows: 1, columns: [3, 4, 5, 6] });
  const certain = sorted(
    readings('P-6120 2017-02-19 12350.0', {
      'thrust_play found': 0.43,
      'runout found': '0..0.01',
      'thrust_play left': 0.21,
      'runout left': 0.01,
    }),
    readings('P-6120 2018-09-08 23905.0', {
      'thrust_play found': '0.38..0.42',
      'runout found': 0.02,
      'runout left': 0.01,
    }),
    readings('P-6121 2017-04-02 11760.0', { 'runout found': 0.02, 'thrust_play left': 0.22 }),
    readings('P-6121 2018-11-25 22480.0', {
      'thrust_play found': 0.39,
      'runout found': 0.03,
      'thrust_play left': 0.2,
      'runout left': 0.01,
    }),
  );
  const always = [
    '7 | 4 readings of a held overhaul',
    '7 | Running hours |  | neither unit_hours nor engine_hours can be read: give one of them',
    '8 | Runout as found (mm) | =2*0.01 | a formula, never evaluated',
  ];
  const heldOf = (held: readonly string[]) =>
    held.map((line) => line.replace('| unit_hours |', '| Running hours |'));

  it('reads marks, below, ranges and words; holds a formula, missing hours and a serial day', async () => {
    const sheet = await imported(name);
    expect(sheet.used).toEqual(certain);
    expect(heldOf(sheet.held)).toEqual([
      ...always.slice(0, 2),
      '8 | 3 readings of a held overhaul',
      '8 | Date | 43101 | waits for an answer: is it 2018-01-01?',
      ...always.slice(2),
    ]);
    expect(sheet.questions).toEqual([
      "Date | Is ‘43101’ the day 2018-01-01? a spreadsheet's serial number: 2018-01-01 if it counts days since 1899-12-30 | yes/no | 1",
    ]);
    expect(sheet.interpreted).toEqual([
      '2 | Running hours | 12,350 | thousands comma taken out (and 2 more in this column)',
      "2 | Runout as found (mm) | <0.01 | 'below' read as from 0 up to the number",
      "2 | Thrust play as found (mm) | 0.43* | '*' taken off: a mark that may refer to a remark",
      '3 | Thrust play as found (mm) | 0.38-0.42 | read as an interval',
      '3 | Thrust play as left (mm) | not measured | no reading: ‘not measured’',
      '4 | Runout as left (mm) | OK | no reading: ‘OK’',
      '4 | Thrust play as found (mm) | ok | no reading: ‘ok’',
      "5 | Running hours | 22480H | 'H' taken off",
    ]);
    expect(sheet.counts).toEqual([cells(), 13, 3, 8]);
  });

  it('takes the serial for a day once that is confirmed, and holds it once it is denied', async () => {
    const confirmed = await imported(name, answering({ dates: 'yes' }));
    expect(confirmed.used).toEqual(
      sorted(
        certain,
        readings('P-6123 2018-01-01 12875.0', {
          'thrust_play found': 0.41,
          'thrust_play left': 0.22,
          'runout left': 0.01,
        }),
      ),
    );
    expect(heldOf(confirmed.held)).toEqual(always);
    expect(confirmed.counts).toEqual([cells(), 16, 3, 5]);
    const denied = await imported(name, answering({ dates: 'no' }));
    expect(denied.used).toEqual(certain);
    expect(denied.held).toContain('8 | Date | 43101 | not a date, as answered');
    expect(denied.questions).toEqual([]);
  });
});
