import type { SheetCase } from './SheetCase';

const order = 'waits for an answer: the order of day and month';
const serialQuestion = (text: string, day: string) =>
  `date | Is ‘${text}’ the day ${day}? a spreadsheet's serial number: ${day} if it counts days since 1899-12-30 | yes/no | 1`;

/** Days as workshops write them. */
export const dateCases: readonly SheetCase[] = [
  {
    title: 'month names of five languages, with and without a time of day',
    text: `serial;date;hours;thrust play left (mm)
M-1;14 March 2014;1000;0.11
M-1;3. Mai 2015;2000;0.12
M-1;5 déc. 2016;3000;0.13
M-1;1 января 2018;4000;0.14
M-1;Des 24, 2019 14:30;5000;0.15`,
    used: [
      'M-1 2014-03-14 1000.0 thrust_play left 0.11',
      'M-1 2015-05-03 2000.0 thrust_play left 0.12',
      'M-1 2016-12-05 3000.0 thrust_play left 0.13',
      'M-1 2018-01-01 4000.0 thrust_play left 0.14',
      'M-1 2019-12-24 5000.0 thrust_play left 0.15',
    ],
    cells: [5, 5, 0],
  },
  {
    title: 'two-digit years, dotted',
    text: `serial;date;hours;thrust play left (mm)
M-1;02.11.97;1000;0.11
M-1;31.10.16;2000;0.12`,
    used: ['M-1 1997-11-02 1000.0 thrust_play left 0.11', 'M-1 2016-10-31 2000.0 thrust_play left 0.12'],
    cells: [2, 2, 0],
  },
  {
    title: 'month first, settled by one day above 12',
    text: `serial,date,hours,thrust play left (mm)
M-1,02/03/2016,1000,0.11
M-1,01/25/2017,2000,0.12`,
    used: ['M-1 2016-02-03 1000.0 thrust_play left 0.11', 'M-1 2017-01-25 2000.0 thrust_play left 0.12'],
    cells: [2, 2, 0],
  },
  {
    title: 'an order of day and month that nothing settles: asked, then answered',
    text: `serial,date,hours,thrust play left (mm)
M-1,02/03/2016,1000,0.11
M-1,04/05/2017,2000,0.12`,
    used: [],
    held: [
      '2 | 1 readings of a held overhaul',
      `2 | date | 02/03/2016 | ${order}`,
      '3 | 1 readings of a held overhaul',
      `3 | date | 04/05/2017 | ${order}`,
    ],
    asked: [
      'date | In which order are the dates written? Examples: ‘02/03/2016’, ‘04/05/2017’. | day first/month first/year first | 2',
    ],
    cells: [2, 0, 0],
    answered: [
      {
        answers: { 'date order': 'month first' },
        used: ['M-1 2016-02-03 1000.0 thrust_play left 0.11', 'M-1 2017-04-05 2000.0 thrust_play left 0.12'],
        cells: [2, 2, 0],
      },
      {
        answers: { 'date order': 'day first' },
        used: ['M-1 2016-03-02 1000.0 thrust_play left 0.11', 'M-1 2017-05-04 2000.0 thrust_play left 0.12'],
        cells: [2, 2, 0],
      },
    ],
  },
  {
    title: 'an order that two days contradict: asked, and what it cannot read is asked or held',
    text: `serial,date,hours,thrust play left (mm)
M-1,25/03/2016,1000,0.11
M-1,04/28/2017,2000,0.12`,
    used: [],
    held: [
      '2 | 1 readings of a held overhaul',
      `2 | date | 25/03/2016 | ${order}`,
      '3 | 1 readings of a held overhaul',
      `3 | date | 04/28/2017 | ${order}`,
    ],
    asked: [
      'date | In which order are the dates written? Examples: ‘25/03/2016’, ‘04/28/2017’. | day first/month first/year first | 2',
    ],
    cells: [2, 0, 0],
    answered: [
      {
        answers: { 'date order': 'day first' },
        used: ['M-1 2016-03-25 1000.0 thrust_play left 0.11'],
        held: [
          '3 | 1 readings of a held overhaul',
          '3 | date | 04/28/2017 | waits for an answer: is it 2017-04-28?',
        ],
        asked: ['date | Is ‘04/28/2017’ the day 2017-04-28? not written day first | yes/no | 1'],
        cells: [2, 1, 0],
      },
      {
        answers: { 'date order': 'day first', dates: 'yes' },
        used: ['M-1 2016-03-25 1000.0 thrust_play left 0.11', 'M-1 2017-04-28 2000.0 thrust_play left 0.12'],
        cells: [2, 2, 0],
      },
    ],
  },
  {
    title: 'serial numbers of a spreadsheet, one confirmed and one denied',
    text: `serial,date,hours,thrust play left (mm)
M-1,2014-05-06,500,0.10
M-1,42430,1000,0.11
M-1,45000,2000,0.12`,
    used: ['M-1 2014-05-06 500.0 thrust_play left 0.1'],
    held: [
      '3 | 1 readings of a held overhaul',
      '3 | date | 42430 | waits for an answer: is it 2016-03-01?',
      '4 | 1 readings of a held overhaul',
      '4 | date | 45000 | waits for an answer: is it 2023-03-15?',
    ],
    asked: [serialQuestion('42430', '2016-03-01'), serialQuestion('45000', '2023-03-15')],
    cells: [3, 1, 0],
    answered: [
      {
        answers: { 'Is ‘42430’': 'yes', 'Is ‘45000’': 'no' },
        used: ['M-1 2014-05-06 500.0 thrust_play left 0.1', 'M-1 2016-03-01 1000.0 thrust_play left 0.11'],
        held: ['4 | 1 readings of a held overhaul', '4 | date | 45000 | not a date, as answered'],
        cells: [3, 2, 0],
      },
    ],
  },
];
