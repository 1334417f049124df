import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Answers } from '../../../lib/records/intake/Answers';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { answering, importSheets } from './importSheets';
import { bytesOf, countsOf, filledCells, importOwn, readings, sorted } from './ownSheet';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const imported = (name: string, answers?: Answers) => importOwn(database, name, answers);

describe('04: repetitions, a revision, a job dated twice', () => {
  const name = '04-duplicates-and-revisions.csv';
  const cells = () =>
    filledCells(name, { encoding: 'utf-8', delimiter: ';', headerRows: 1, columns: [4, 5, 6] });
  const other = readings('P-6131 2015-09-14 10120.0', {
    'thrust_play found': 0.25,
    'thrust_play left': 0.15,
    'runout left': 0.02,
  });
  const job = { 'thrust_play found': 0.29, 'thrust_play left': 0.16, 'runout left': 0.01 };
  const first = readings('P-6130 2015-09-06 10440.0', job);
  const second = readings('P-6130 2015-09-09 10440.0', job);

  it('keeps one overhaul each and asks about the job dated twice', async () => {
    const sheet = await imported(name);
    expect(sheet.used).toEqual(sorted(first, other));
    expect(sheet.held).toEqual([
      '2 |  | P-6130 | 06.09.2015 | 10440 | 1 | 0.27 | 0.16 | 0.01 | superseded by revision 2 in line 4',
      '3 |  | P-6130 | 06.09.2015 | 10440 | 1 | 0.27 | 0.16 | 0.01 | exact repetition of line 2 of 04-duplicates-and-revisions.csv',
      '5 | 3 readings of a held overhaul',
      '5 | overhaul | P-6130/2015-09-09 | waits for an answer: is this the same job as the one dated otherwise?',
    ]);
    expect(sheet.questions).toEqual([
      'date | P-6130 has overhauls of 2015-09-06 and 2015-09-09 at the same 10440 h with the same readings. Is it one job? | one job, of 2015-09-06/one job, of 2015-09-09/two jobs | 3',
    ]);
    expect(sheet.counts).toEqual([cells(), 6, 0, 9]);
  });

  it.each([
    ['one job, of 2015-09-06', sorted(first, other)],
    ['one job, of 2015-09-09', sorted(second, other)],
    ['two jobs', sorted(first, second, other)],
  ])('answered %s', async (answer, used) => {
    const sheet = await imported(name, answering({ 'job dated twice': answer }));
    expect(sheet.used).toEqual(used);
    expect(sheet.questions).toEqual([]);
    expect(sheet.counts).toEqual([cells(), used.length, 0, cells() - used.length]);
  });
});

describe('05: engine meter replaced, unit moved', () => {
  const name = '05-engine-meter-replaced.csv';
  const file = { name, bytes: bytesOf(name) };
  const cells = () =>
    filledCells(name, { encoding: 'utf-8', delimiter: ',', headerRows: 1, columns: [5, 6] });

  it('never takes the engine meter for the hours of the unit', async () => {
    const sheet = await imported(name);
    expect(sheet.counts[0]).toBe(cells());
    const meter = / (?:2960|14210|64380)\.0 /;
    expect(sheet.used.filter((reading) => meter.test(reading))).toEqual([]);
  });

  it('derives unit hours once the installations and the meter that was replaced are known', async () => {
    const encode = (text: string) => new TextEncoder().encode(text);
    const sheet = await importSheets(database, [
      file,
      {
        name: 'installations.csv',
        bytes: encode(`unit,site,engine,bank,from_date,to_date,engine_hours_at_fit,unit_hours_at_fit
P-6140,Brenn,BRN-4,B,2012-06-01,2016-04-17,30000,0
P-6147,Brenn,BRN-4,B,2016-04-17,,2960,21800
P-6140,Brenn,BRN-7,B,2016-07-02,,55120,29260
`),
      },
      {
        name: 'events.csv',
        bytes: encode('date,engine,kind,value\n2015-09-05,BRN-4,meter_replaced,56300\n'),
      },
    ]);
    // By hand: 56300 + 2960 - 30000 = 29260; 21800 + 14210 - 2960 = 33050; 29260 + 64380 - 55120 = 38520.
    expect(sheet.used).toEqual(
      sorted(
        readings('P-6140 2013-03-10 8400.0', { 'thrust_play found': 0.21, 'thrust_play left': 0.11 }),
        readings('P-6140 2014-08-24 18950.0', { 'thrust_play found': 0.22, 'thrust_play left': 0.12 }),
        readings('P-6140 2016-04-17 29260.0', { 'thrust_play found': 0.23, 'thrust_play left': 0.11 }),
        readings('P-6147 2018-01-28 33050.0', { 'thrust_play left': 0.11 }),
        readings('P-6140 2018-03-04 38520.0', { 'thrust_play found': 0.19, 'thrust_play left': 0.11 }),
      ),
    );
    expect(sheet.held).toEqual([
      '5 | thrust_play_found_mm | 0.18 | when its run started is not known: the first overhaul of the unit in the files is at 33050 h. Add the overhaul or delivery record before it',
    ]);
    expect(countsOf(sheet.files[0])).toEqual([cells(), 9, 0, 1]);
  });
});

describe('06: UTF-16, tabs, micrometres', () => {
  it('reads micrometres and no-break thousands; holds a negative runout', async () => {
    const name = '06-utf16-tab.csv';
    const sheet = await imported(name);
    expect(sheet.used).toEqual(
      sorted(
        readings('P-6150 2015-06-07 12840.0', { 'runout found': 0.03, 'runout left': 0.015 }),
        readings('P-6150 2017-03-12 25310.0', { 'runout found': 0.035, 'runout left': 0.01 }),
        readings('P-6151 2015-07-19 13020.0', { 'runout found': 0.025 }),
        readings('P-6151 2017-05-21 26150.0', { 'runout left': 0.02 }),
      ),
    );
    expect(sheet.held).toEqual([
      '4 | runout left µm | −15 | negative, which this characteristic can never be',
    ]);
    expect(sheet.questions).toEqual([]);
    const cells = filledCells(name, {
      encoding: 'utf-16le',
      delimiter: '\t',
      headerRows: 1,
      columns: [3, 4],
    });
    expect(sheet.counts).toEqual([cells, 6, 0, 1]);
  });
});

describe('07: thou, order of day and month not stated', () => {
  const name = '07-thou-and-day-month.csv';
  const cells = () =>
    filledCells(name, { encoding: 'utf-8', delimiter: ',', headerRows: 1, columns: [3, 4] });
  const certain = sorted(
    readings('P-6160 2014-06-02 9870.0', { 'thrust_play found': 0.1905, 'thrust_play left': 0.10668 }),
    readings('P-6160 2015-12-09 19460.0', { 'thrust_play found': 0.2032, 'thrust_play left': 0.11176 }),
    readings('P-6161 2014-06-21 9640.0', { 'thrust_play found': 0.19812, 'thrust_play left': 0.10922 }),
    readings('P-6161 2016-01-08 19215.0', { 'thrust_play left': 0.10414 }),
  );

  it('settles day first by 21/06, and asks whether 0.19 is millimetres', async () => {
    const sheet = await imported(name);
    expect(sheet.used).toEqual(certain);
    expect(sheet.message).toContain("'21/06/2014' can only be day first, which settles the whole column");
    expect(sheet.held).toEqual([
      '5 | Thrust play found (thou) | 0.19 | waits for an answer: out of scale against the other readings, by the look of it times 39.4 (millimetres for thou)',
    ]);
    expect(sheet.questions).toEqual([
      'Thrust play found (thou) | ‘0.19’ in line 5: out of scale against the other readings of thrust play. What is right? | as written/times 39.4 (millimetres for thou) | 1',
    ]);
    expect(sheet.counts).toEqual([cells(), 7, 0, 1]);
  });

  it.each([
    ['times 39.4 (millimetres for thou)', 0.19],
    ['as written', 0.004826],
  ])('answered %s', async (answer, value) => {
    const sheet = await imported(name, answering({ scale: answer }));
    expect(sheet.used).toEqual(
      sorted(certain, readings('P-6161 2016-01-08 19215.0', { 'thrust_play found': value })),
    );
    expect(sheet.held).toEqual([]);
    expect(sheet.counts).toEqual([cells(), 8, 0, 0]);
  });
});

describe('08: no readings at all', () => {
  it('says what was looked for and imports nothing', async () => {
    const sheet = await imported('08-not-readings.csv');
    expect(sheet.counts).toEqual([0, 0, 0, 0]);
    expect(sheet.files[0]).toMatchObject({ table: null, rowsIn: 0 });
    expect(sheet.message).toMatch(
      /^Not an overhaul sheet: no column for a unit \(serial\), a date, readings/,
    );
    expect(sheet.message).toContain('Item, Article, Pieces, Each. Nothing was imported from it.');
    expect(sheet.questions).toEqual([]);
  });
});
