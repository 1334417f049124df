import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Answers } from '../../../../lib/records/intake/Answers';
import type { Database } from '../../../../lib/store/Connector';
import { openNodeDatabase } from '../../../../lib/store/nodeDatabase';
import { textFile } from '../../../support/textFile';
import { answering, importSheets } from '../importSheets';
import { bytesOf, countsOf, importOwn, readings, sorted } from '../ownSheet';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const yes: Answers = ({ choices }) => (choices.includes('yes') ? 'yes' : undefined);
/** Yes to everything but questions that begin so. */
const yesBut = (given: Readonly<Record<string, string>>): Answers => {
  const other = answering(given);
  return (question) => other(question) ?? yes(question);
};

describe('a workshop’s sheet whose remarks tell of meters and moves', () => {
  const name = '09-meter-german.csv';
  const left = (job: string, found: number, leftBehind: number) =>
    readings(job, { 'thrust_play found': found, 'thrust_play left': leftBehind });
  const beforeTheMeter = sorted(
    left('P-6171 2013-03-14 9400.0', 0.21, 0.12),
    left('P-6172 2013-03-14 9400.0', 0.22, 0.11),
    left('P-6171 2014-10-02 18950.0', 0.24, 0.12),
  );

  it('asks each fact once and derives every hour once all is confirmed', async () => {
    const sheet = await importOwn(database, name, yes);
    // By hand: 26,140 + 3,310 = 29,450; 16,200 + 11,870 - 3,310 = 24,760; 29,450 + 44,600 - 36,250 = 37,800.
    expect(sheet.used).toEqual(
      sorted(
        beforeTheMeter,
        left('P-6171 2016-05-21 29450.0', 0.25, 0.13),
        left('P-6172 2016-05-21 29450.0', 0.27, 0.12),
        left('P-6179 2017-09-30 24760.0', 0.2, 0.12),
        left('P-6171 2018-01-12 37800.0', 0.22, 0.12),
      ),
    );
    expect(sheet.held).toEqual([]);
    expect(sheet.counts).toEqual([14, 14, 0, 0]);
    expect(sheet.interpreted).toContain(
      '5 | Bemerkung | Zähler getauscht am 08.11.2015 bei 26.140 h | as answered: the hour meter of BRN-2 was replaced on 2015-11-08 at 26,140 h',
    );
  });

  it('holds all that rests on an answer until it is given, and says which', async () => {
    const sheet = await importOwn(database, name);
    expect(sheet.used).toEqual([]);
    expect(sheet.questions).toEqual([
      'Bemerkung | Was the hour meter of BRN-2 replaced on 2015-11-08 at 26,140 h, as the note in line 5 says (‘Zähler getauscht am 08.11.2015 bei 26.140 h’)? | yes/no | 8',
      'Bemerkung | Was P-6179 fitted on BRN-2 on 2016-05-21 with 16,200 h of its own at the 3,310 h of the engine’s meter in line 5, as the note in line 7 says (‘Läufer getauscht am 21.05.2016; dieser kam mit 16.200 Std.’)? | yes/no | 2',
      'Bemerkung | Was P-6171 fitted on BRN-5 on 2016-08-19 at 36,250 h of the engine’s meter, coming from BRN-2, as the note in line 8 says (‘war auf BRN-2; hier eingebaut am 19.08.2016 bei 36.250 h’)? | yes/no | 2',
      'Zählerstand Motor | Was P-6171 on BRN-2 from new, so that its hours at 2013-03-14 are the 9,400 h of the meter? | yes/no | 6',
      'Zählerstand Motor | Was P-6172 on BRN-2 from new, so that its hours at 2013-03-14 are the 9,400 h of the meter? | yes/no | 4',
    ]);
    expect(sheet.held).toContain(
      '2 | Zählerstand Motor | 9.400 | waits for an answer: was P-6171 on BRN-2 from new?',
    );
    expect(sheet.held).toContain(
      '7 | Zählerstand Motor | 11.870 | waits for an answer: is it so that P-6179 was fitted on BRN-2 on 2016-05-21 with 16,200 h of its own at the 3,310 h of the engine’s meter in line 5?',
    );
    expect(sheet.counts).toEqual([14, 0, 0, 14]);
  });

  it('does not carry hours over a meter that falls once its replacement is denied', async () => {
    const sheet = await importOwn(database, name, yesBut({ 'meter event': 'no' }));
    expect(sheet.used).toEqual(sorted(beforeTheMeter, left('P-6179 2017-09-30 24760.0', 0.2, 0.12)));
    const falls =
      'the hour meter of BRN-2 falls from 18,950 h on 2014-10-02 to 3,310 h on 2016-05-21 and no event explains it: give meter_replaced with the old meter’s last reading in events.csv, or correct the figure';
    expect(sheet.held.filter((line) => !line.includes('of a held overhaul'))).toEqual([
      `5 | Zählerstand Motor | 3.310 | ${falls}`,
      `6 | Zählerstand Motor | 3.310 | ${falls}`,
      `8 | Zählerstand Motor | 44.600 | ${falls}`,
    ]);
  });

  it('says what is missing where a unit was not there from new, or was not fitted as the note says', async () => {
    const sheet = await importOwn(
      database,
      name,
      yesBut({ 'Was P-6171 on BRN-2 from new': 'no', 'Was P-6179 fitted': 'no' }),
    );
    const give = 'give a row of installations.csv with engine_hours_at_fit and unit_hours_at_fit';
    expect(sheet.held).toContain(
      `2 | Zählerstand Motor | 9.400 | P-6171 was not on BRN-2 from new, as answered: when and with how many hours it came is not known; ${give}`,
    );
    expect(sheet.held).toContain(
      `7 | Zählerstand Motor | 11.870 | when and with how many hours P-6179 came to BRN-2 is not known: P-6171 was there before it; ${give}`,
    );
    expect(sheet.held.find((line) => line.startsWith('8 | Z'))).toContain(
      'the hours of P-6171 when it was fitted on BRN-5 on 2016-08-19 are not known',
    );
    expect(sheet.used).toEqual(
      sorted(left('P-6172 2013-03-14 9400.0', 0.22, 0.11), left('P-6172 2016-05-21 29450.0', 0.27, 0.12)),
    );
  });
});

describe('the sheet with canonical names', () => {
  it('has its hours from its remarks alone once they are confirmed', async () => {
    const sheet = await importOwn(database, '05-engine-meter-replaced.csv', yes);
    // By hand: 56,300 + 2,960 = 59,260; 21,800 + 14,210 - 2,960 = 33,050; 59,260 + 64,380 - 55,120 = 68,520.
    expect(sheet.used.filter((line) => line.includes('left'))).toEqual([
      'P-6140 2013-03-10 38400.0 thrust_play left 0.11',
      'P-6140 2014-08-24 48950.0 thrust_play left 0.12',
      'P-6140 2016-04-17 59260.0 thrust_play left 0.11',
      'P-6140 2018-03-04 68520.0 thrust_play left 0.11',
      'P-6147 2018-01-28 33050.0 thrust_play left 0.11',
    ]);
    expect(sheet.counts).toEqual([10, 10, 0, 0]);
  });

  it('is asked nothing that installations.csv and events.csv say', async () => {
    const name = '05-engine-meter-replaced.csv';
    const sheet = await importSheets(database, [
      { name, bytes: bytesOf(name) },
      textFile(
        'installations.csv',
        `unit,engine,bank,from_date,to_date,engine_hours_at_fit,unit_hours_at_fit
P-6140,BRN-4,B,2012-06-01,2016-04-17,30000,0
P-6147,BRN-4,B,2016-04-17,,2960,1800
P-6140,BRN-7,B,2016-07-02,,55120,`,
      ),
      textFile('events.csv', 'date,engine,kind,value\n2015-09-05,BRN-4,meter_replaced,56300'),
    ]);
    expect(sheet.questions).toEqual([]);
    // The hours on BRN-7 start with those it had when it left BRN-4: 56,300 + 2,960 - 30,000 = 29,260.
    expect(sheet.used).toContain('P-6140 2018-03-04 38520.0 thrust_play found 0.19');
    expect(countsOf(sheet.files.find((file) => file.file === name))).toEqual([10, 10, 0, 0]);
  });
});

describe('meters that contradict themselves', () => {
  const header = 'unit,engine,bank,date,engine_hours,thrust_play_left,remarks';
  const sheetOf = (rows: string) => [textFile('sheet.csv', `${header}\n${rows.trim()}`)];

  it('hold the one reading that does not fit', async () => {
    const sheet = await importSheets(
      database,
      sheetOf(`
P-1,ENG-1,A,2014-01-01,5000,0.11,
P-1,ENG-1,A,2016-01-01,150000,0.12,
P-1,ENG-1,A,2018-01-01,25000,0.13,
P-1,ENG-1,A,2020-01-01,35000,0.14,`),
      yes,
    );
    expect(sheet.used.map((line) => line.split(' ')[2])).toEqual(['5000.0', '25000.0', '35000.0']);
    expect(sheet.held[1]).toBe(
      '3 | engine_hours | 150000 | the hour meter of ENG-1 reads 150,000 h, which does not fit between 5,000 h on 2014-01-01 and 25,000 h on 2018-01-01: check the figure',
    );
  });

  it('hold all after a fall for good, and never give hours below those when fitted', async () => {
    const sheet = await importSheets(
      database,
      [
        ...sheetOf(`
P-1,ENG-1,A,2014-01-01,30000,0.11,
P-1,ENG-1,A,2016-01-01,1000,0.12,
P-1,ENG-1,A,2018-01-01,12000,0.13,meter replaced
P-2,ENG-2,A,2018-01-01,4000,0.14,`),
        textFile(
          'installations.csv',
          'unit,engine,bank,from_date,engine_hours_at_fit,unit_hours_at_fit\nP-2,ENG-2,A,2017-01-01,9000,70000',
        ),
      ],
      yes,
    );
    expect(sheet.used.map((line) => line.split(' ')[2])).toEqual(['30000.0']);
    expect(sheet.held.filter((line) => line.includes('engine_hours'))).toEqual([
      '3 | engine_hours | 1000 | the hour meter of ENG-1 falls from 30,000 h on 2014-01-01 to 1,000 h on 2016-01-01 and no event explains it: give meter_replaced with the old meter’s last reading in events.csv, or correct the figure',
      '4 | engine_hours | 12000 | the note in line 4 says that the hour meter of ENG-1 was replaced by 2018-01-01, but not the last reading of the old meter: give it in events.csv or installations.csv',
      '5 | engine_hours | 4000 | the hour meter of ENG-2 reads 4000 h, less than the 9000 h when P-2 was fitted on 2017-01-01 with all meter events: one is missing, or a figure is wrong',
    ]);
  });

  it('ask when a unit left, and on which day where a date reads two ways', async () => {
    const rows = `
P-1,ENG-1,A,2014-01-01,5000,0.11,
P-1,ENG-1,A,2015-01-01,2000,0.12,meter replaced 03/04/2014 at 7000
P-1,ENG-2,A,2017-01-01,61000,0.13,fitted here 2015-02-01 at 50000`;
    const day = 'Was the hour meter';
    const open = await importSheets(database, sheetOf(rows), yesBut({ [day]: 'yes, but on 2014-03-04' }));
    expect(open.used.map((line) => line.split(' ')[2])).toEqual(['5000.0', '9000.0', '20000.0']);
    const stayed = await importSheets(database, sheetOf(rows), yesBut({ 'unit left': 'no' }));
    expect(stayed.used.map((line) => line.split(' ')[2])).toEqual(['5000.0', '9000.0']);
    expect(stayed.held.at(-1)).toContain(
      'the hours of P-1 when it was fitted on ENG-2 on 2015-02-01 are not known',
    );
  });

  it('take engines of one name at two sites for two', async () => {
    const sheet = await importSheets(
      database,
      [
        textFile(
          'sheet.csv',
          `unit,site,engine,date,engine_hours,thrust_play_left,remarks
P-1,Brenn,1,2014-01-01,5000,0.11,
P-2,Hove,1,2015-01-01,3000,0.12,
P-1,Brenn,1,2016-01-01,1000,0.13,meter replaced 2015-06-01 at 11000
P-2,Hove,1,2017-01-01,18000,0.14,`,
        ),
      ],
      yes,
    );
    expect(sheet.used.map((line) => line.split(' ')[2])).toEqual(['5000.0', '12000.0', '3000.0', '18000.0']);
  });
});
