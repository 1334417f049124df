import type { SheetCase } from './SheetCase';

const two = (unit: string) => [
  `${unit} 2016-04-18 9000.0 thrust_play found 0.21`,
  `${unit} 2016-04-18 9000.0 thrust_play left 0.12`,
  `${unit} 2018-04-18 18000.0 thrust_play found 0.22`,
  `${unit} 2018-04-18 18000.0 thrust_play left 0.13`,
];

/** Lines that are no overhauls, and headers of several rows. */
export const lineCases: readonly SheetCase[] = [
  {
    title: 'totals, notes and a page number under the table',
    text: `serial,date,hours,thrust play found (mm),thrust play left (mm)
L-1,2016-04-18,9000,0.21,0.12
L-1,2018-04-18,18000,0.22,0.13
Average,,,0.215,0.125
* measured with the engine cold,,,,
Page 1 of 1,,,,`,
    used: two('L-1'),
    cells: [4, 4, 0],
    noted: [
      '4 |  | Average | 0.215 | 0.125 | a totals line: not an overhaul',
      '5 |  | * measured with the engine cold | a note under the table: not an overhaul',
      '6 |  | Page 1 of 1 | a note under the table: not an overhaul',
    ],
  },
  {
    title: 'the header again in the middle, blank lines, a title above',
    text: `Overhauls of the east plant;;;;

serial;date;hours;thrust play found (mm);thrust play left (mm)
L-1;2016-04-18;9000;0.21;0.12

serial;date;hours;thrust play found (mm);thrust play left (mm)
L-1;2018-04-18;18000;0.22;0.13`,
    used: two('L-1'),
    cells: [4, 4, 0],
    noted: [
      '6 |  | serial | date | hours | thrust play found (mm) | thrust play left (mm) | the header again: not an overhaul',
    ],
  },
  {
    title: 'a sep= line',
    text: `sep=;
serial;date;hours;thrust play found (mm);thrust play left (mm)
L-1;2016-04-18;9000;0,21;0,12
L-1;2018-04-18;18000;0,22;0,13`,
    used: two('L-1'),
    cells: [4, 4, 0],
  },
  {
    title: 'three header rows: stage, characteristic, unit of measure',
    text: `;;;Before dismantling;;After assembly;
Serial;Date;Hours;Thrust play;Runout;Thrust play;Runout
;;h;1/100 mm;µm;1/100 mm;µm
L-1;2016-04-18;9000;21;20;12;10`,
    used: [
      'L-1 2016-04-18 9000.0 thrust_play found 0.21',
      'L-1 2016-04-18 9000.0 runout found 0.02',
      'L-1 2016-04-18 9000.0 thrust_play left 0.12',
      'L-1 2016-04-18 9000.0 runout left 0.01',
    ],
    cells: [4, 4, 0],
  },
  {
    title: 'a row of units under the names',
    text: `serial,date,hours,thrust play found,thrust play left
,,[h],[mm],[mm]
L-1,2016-04-18,9000,0.21,0.12
L-1,2018-04-18,18000,0.22,0.13`,
    used: two('L-1'),
    cells: [4, 4, 0],
  },
  {
    title: 'long by characteristic, wide by stage',
    text: `serial,date,hours,characteristic,as found (mm),as left (mm)
L-1,2016-04-18,9000,thrust play,0.21,0.12
L-1,2016-04-18,9000,runout,0.02,n/a
L-1,2018-04-18,18000,thrust play,0.22,0.13`,
    used: [...two('L-1'), 'L-1 2016-04-18 9000.0 runout found 0.02'],
    cells: [6, 5, 1],
  },
  {
    title: 'long by characteristic and stage, wide by clock position',
    text: `serial,date,hours,stage,characteristic,12 o'clock (mm),3 o'clock (mm),6 o'clock (mm),9 o'clock (mm)
L-1,2016-04-18,9000,found,compressor tip clearance,0.60,0.55,0.50,0.54
L-1,2016-04-18,9000,left,compressor tip clearance,0.61,0.56,0.51,x`,
    used: [
      'L-1 2016-04-18 9000.0 tip_compressor found 12 0.6',
      'L-1 2016-04-18 9000.0 tip_compressor found 3 0.55',
      'L-1 2016-04-18 9000.0 tip_compressor found 6 0.5',
      'L-1 2016-04-18 9000.0 tip_compressor found 9 0.54',
      'L-1 2016-04-18 9000.0 tip_compressor left 12 0.61',
      'L-1 2016-04-18 9000.0 tip_compressor left 3 0.56',
      'L-1 2016-04-18 9000.0 tip_compressor left 6 0.51',
    ],
    cells: [8, 7, 1],
  },
  {
    title: 'carriage returns only',
    text: 'serial,date,hours,thrust play found (mm),thrust play left (mm)\rL-1,2016-04-18,9000,0.21,0.12\rL-1,2018-04-18,18000,0.22,0.13\r',
    used: two('L-1'),
    cells: [4, 4, 0],
  },
  {
    title: 'a quoted cell with delimiter, quotation marks and a line break keeps the lines counted',
    text: `serial,date,hours,thrust play found (mm),thrust play left (mm),remarks
L-1,2016-04-18,9000,0.21,0.12,"collar, worn
""both"" faces, line 2"
L-1,2018-04-18,18000,0.22,0.13,
L-2,2018-04-18,18000,0.2z,0.13,`,
    used: [...two('L-1'), 'L-2 2018-04-18 18000.0 thrust_play left 0.13'],
    held: ['5 | thrust play found (mm) | 0.2z | words or letters beside the number'],
    cells: [6, 5, 0],
  },
  {
    title: 'a line with a cell too many is held whole and does not shift the others',
    text: `serial,date,hours,thrust play found (mm),thrust play left (mm)
L-1,2016-04-18,9000,0.21,0.12
L-1,2018-04-18,18000,0.22,0.13
L-2,2018-04-18,18,000,0.22,0.13`,
    used: two('L-1'),
    held: [
      '4 |  | L-2 | 2018-04-18 | 18 | 000 | 0.22 | 0.13 | the line has 6 cells where the header has 5: put cells that contain the delimiter in quotation marks',
    ],
    cells: [6, 4, 0],
  },
  {
    title: 'a quotation mark that is opened and not closed costs its own line, whose readings count',
    text: `serial,date,hours,thrust play found (mm),thrust play left (mm),remarks
L-1,2016-04-18,9000,0.21,0.12,fine
L-1,2018-04-18,18000,0.22,0.13,fine
L-2,2018-04-18,18000,0.22,,"rubbed`,
    used: two('L-1'),
    held: [
      '4 |  | L-2 | 2018-04-18 | 18000 | 0.22 |  | "rubbed | a quotation mark is opened and not closed: close or remove it',
    ],
    cells: [5, 4, 0],
  },
  {
    title: 'a cell too many in a sheet with one row a reading',
    text: `serial,date,hours,stage,characteristic,value (mm)
L-1,2016-04-18,9000,found,thrust play,0.21
L-1,2016-04-18,9000,left,thrust play,0.12
L-1,2018-04-18,18000,found,thrust play,0.22
L-1,2018-04-18,18000,left,thrust play,0.13
L-2,2018-04-18,18000,left,thrust play,0,13`,
    used: two('L-1'),
    held: [
      '6 |  | L-2 | 2018-04-18 | 18000 | left | thrust play | 0 | 13 | the line has 7 cells where the header has 6: put cells that contain the delimiter in quotation marks',
    ],
    cells: [5, 4, 0],
  },
  {
    title: 'headers and nothing under them',
    text: 'serial,date,hours,thrust play found (mm),thrust play left (mm)',
    used: [],
    cells: [0, 0, 0],
  },
];
