import type { SheetCase } from './SheetCase';

const columns = Array.from({ length: 195 }, (_, index) => `extra ${index + 1}`);

/** Sheets of unusual shape. */
export const formCases: readonly SheetCase[] = [
  {
    title: 'one row a reading, intervals in two columns of their own',
    text: `serial,date,hours,stage,characteristic,value (mm),goes (mm),does not go (mm)
V-1,2016-04-18,9000,found,thrust play,,0.40,0.45
V-1,2016-04-18,9000,left,thrust play,0.21,,
V-1,2018-04-18,18000,found,thrust play,,0.45,0.40
V-1,2018-04-18,18000,left,thrust play,,0.20,`,
    used: [
      'V-1 2016-04-18 9000.0 thrust_play found 0.4..0.45',
      'V-1 2016-04-18 9000.0 thrust_play left 0.21',
    ],
    held: [
      '4 | value (mm) | 0.45 to 0.40 | lower is above upper',
      '5 | value (mm) | 0.20 | an interval reading needs both lower and upper',
    ],
    cells: [4, 2, 0],
  },
  {
    title: 'a reading in a column of its own beside one row a characteristic is not lost',
    text: `serial,date,hours,characteristic,as found (mm),as left (mm),nut stand out left (mm)
V-1,2016-04-18,9000,thrust play,0.21,0.12,-0.05
V-1,2016-04-18,9000,runout,0.02,0.01,`,
    used: [
      'V-1 2016-04-18 9000.0 thrust_play found 0.21',
      'V-1 2016-04-18 9000.0 thrust_play left 0.12',
      'V-1 2016-04-18 9000.0 runout found 0.02',
      'V-1 2016-04-18 9000.0 runout left 0.01',
      'V-1 2016-04-18 9000.0 nut_stand_out left -0.05',
    ],
    cells: [5, 5, 0],
  },
  {
    title: '200 columns',
    text: `serial,date,hours,${columns.join(',')},thrust play found (mm),thrust play left (mm)
V-1,2016-04-18,9000,${columns.map((_, index) => `${index / 10}`).join(',')},0.21,0.12
V-1,2018-04-18,18000,${columns.map(() => '').join(',')},0.22,0.13`,
    used: [
      'V-1 2016-04-18 9000.0 thrust_play found 0.21',
      'V-1 2016-04-18 9000.0 thrust_play left 0.12',
      'V-1 2018-04-18 18000.0 thrust_play found 0.22',
      'V-1 2018-04-18 18000.0 thrust_play left 0.13',
    ],
    cells: [4, 4, 0],
  },
  {
    title: 'formulas in every column are texts and are never evaluated',
    text: `serial,date,hours,thrust play found (mm),remarks
V-1,2016-04-18,9000,0.21,=1+1
V-1,=TODAY(),18000,0.22,
V-1,2018-04-18,=9000*2,0.23,
V-2,2018-04-18,9000,@SUM(A1),+A1
V-3,2018-04-18,9000,'0.25,`,
    used: ['V-1 2016-04-18 9000.0 thrust_play found 0.21', 'V-3 2018-04-18 9000.0 thrust_play found 0.25'],
    held: [
      '3 | 1 readings of a held overhaul',
      '3 | date | =TODAY() | a formula, never evaluated',
      '4 | 1 readings of a held overhaul',
      '4 | hours | =9000*2 | a formula, never evaluated',
      '5 | thrust play found (mm) | @SUM(A1) | a formula, never evaluated',
    ],
    cells: [5, 2, 0],
  },
  {
    title: 'a unit of measure in the header that readings are not taken in is held, not guessed',
    text: `serial,date,hours,thrust play found (cm),thrust play left (mm)
V-1,2016-04-18,9000,0.021,0.12`,
    used: ['V-1 2016-04-18 9000.0 thrust_play left 0.12'],
    held: [
      '2 | thrust play found (cm) | 0.021 | the header states a unit of measure that is not known; known are mm, um, in, mil, 0.01mm',
    ],
    cells: [2, 1, 0],
  },
  {
    title: 'limits and margins beside the readings are not taken for readings',
    text: `serial,date,hours,thrust play found (mm),thrust play limit (mm),thrust play margin (mm),next overhaul date
V-1,2016-04-18,9000,0.21,0.30,0.09,2018-04-18`,
    used: ['V-1 2016-04-18 9000.0 thrust_play found 0.21'],
    cells: [1, 1, 0],
  },
];
