import type { SheetCase } from './SheetCase';

const stage = 'waits for an answer: as found or as left';
const stageQuestion = (column: string, cells: number) =>
  `${column} | Were these readings taken as found or as left? | as found (before stripping)/as left (after reassembly) | ${cells}`;

/** Overhauls that contradict each other or miss something. */
export const overhaulCases: readonly SheetCase[] = [
  {
    title: 'a stage that no header states: asked, then answered',
    text: `serial,date,hours,thrust play (mm),runout left (mm)
O-1,2016-04-18,9000,0.21,0.01
O-1,2018-04-18,18000,0.22,0.02`,
    used: ['O-1 2016-04-18 9000.0 runout left 0.01', 'O-1 2018-04-18 18000.0 runout left 0.02'],
    held: [`2 | thrust play (mm) | 0.21 | ${stage}`, `3 | thrust play (mm) | 0.22 | ${stage}`],
    asked: [stageQuestion('thrust play (mm)', 2)],
    cells: [4, 2, 0],
    answered: [
      {
        answers: { stage: 'as found (before stripping)' },
        used: [
          'O-1 2016-04-18 9000.0 runout left 0.01',
          'O-1 2018-04-18 18000.0 runout left 0.02',
          'O-1 2016-04-18 9000.0 thrust_play found 0.21',
          'O-1 2018-04-18 18000.0 thrust_play found 0.22',
        ],
        cells: [4, 4, 0],
      },
      {
        answers: { stage: 'as left (after reassembly)' },
        used: [
          'O-1 2016-04-18 9000.0 runout left 0.01',
          'O-1 2018-04-18 18000.0 runout left 0.02',
          'O-1 2016-04-18 9000.0 thrust_play left 0.21',
          'O-1 2018-04-18 18000.0 thrust_play left 0.22',
        ],
        cells: [4, 4, 0],
      },
    ],
  },
  {
    title: 'revisions: the last one is taken, an empty one goes before none',
    text: `serial;date;hours;rev;thrust play left (mm)
O-1;2016-04-18;9000;;0.10
O-1;2016-04-18;9000;A;0.11
O-1;2016-04-18;9000;B;0.12
O-2;2016-04-18;9000;;0.13`,
    used: ['O-1 2016-04-18 9000.0 thrust_play left 0.12', 'O-2 2016-04-18 9000.0 thrust_play left 0.13'],
    held: [
      '2 |  | O-1 | 2016-04-18 | 9000 |  | 0.10 | superseded by revision B in line 4',
      '3 |  | O-1 | 2016-04-18 | 9000 | A | 0.11 | superseded by revision B in line 4',
    ],
    cells: [4, 2, 0],
  },
  {
    title: 'two overhauls of a unit on one day with different hours stay two',
    text: `serial,date,hours,thrust play left (mm),runout left (mm)
O-1,2016-04-18,9000,0.11,0.01
O-1,2016-04-18,9004,0.12,0.02`,
    used: [
      'O-1 2016-04-18 9000.0 thrust_play left 0.11',
      'O-1 2016-04-18 9000.0 runout left 0.01',
      'O-1 2016-04-18 9004.0 thrust_play left 0.12',
      'O-1 2016-04-18 9004.0 runout left 0.02',
    ],
    cells: [4, 4, 0],
  },
  {
    title: 'hours that fall',
    text: `serial,date,unit hours,thrust play left (mm)
O-1,2014-04-18,9000,0.11
O-1,2016-04-18,18000,0.12
O-1,2018-04-18,2700,0.13`,
    used: ['O-1 2014-04-18 9000.0 thrust_play left 0.11', 'O-1 2016-04-18 18000.0 thrust_play left 0.12'],
    held: [
      '4 | 1 readings of a held overhaul',
      '4 | unit hours | 2700 | the hours do not rise with the dates of the unit’s other overhauls (18000 h before it): check hours and date',
    ],
    cells: [3, 2, 0],
  },
  {
    title: 'unit missing, date missing, hours that are words',
    text: `serial,date,unit hours,thrust play left (mm)
,2014-04-18,9000,0.11
O-1,,9000,0.12
O-1,2016-04-18,about ten thousand,0.13
O-1,2018-04-18,19000,0.14`,
    used: ['O-1 2018-04-18 19000.0 thrust_play left 0.14'],
    held: [
      '2 | 1 readings of a held overhaul',
      '2 | serial |  | the cell is empty; expected: serial of the rotating assembly',
      '3 | 1 readings of a held overhaul',
      '3 | date |  | the cell is empty; expected: day of the overhaul',
      '4 | 1 readings of a held overhaul',
      '4 | unit hours | about ten thousand | no number in the cell',
    ],
    cells: [4, 1, 0],
  },
  {
    title: 'two columns of one name and no stage: each is asked about on its own',
    text: `serial,date,hours,thrust play (mm),thrust play (mm)
O-1,2016-04-18,9000,0.21,0.11`,
    used: [],
    held: [`2 | thrust play (mm) (column 5) | 0.11 | ${stage}`, `2 | thrust play (mm) | 0.21 | ${stage}`],
    asked: [stageQuestion('thrust play (mm)', 1), stageQuestion('thrust play (mm) (column 5)', 1)],
    cells: [2, 0, 0],
    answered: [
      {
        answers: {
          'stage | sheet.csv | thrust play (mm) (column 5)': 'as left (after reassembly)',
          stage: 'as found (before stripping)',
        },
        used: ['O-1 2016-04-18 9000.0 thrust_play found 0.21', 'O-1 2016-04-18 9000.0 thrust_play left 0.11'],
        cells: [2, 2, 0],
      },
    ],
  },
  {
    title: 'words for stage, characteristic and place that are not understood',
    text: `serial,date,hours,stage,characteristic,position,value (mm)
O-1,2016-04-18,9000,as left,thrust play,,0.12
O-1,2016-04-18,9000,perhaps,thrust play,,0.13
O-1,2016-04-18,9000,as left,colour of the paint,,0.14
O-1,2016-04-18,9000,as left,compressor tip clearance,north,0.55
O-1,2016-04-18,9000,as left,compressor tip clearance,12,0.61
O-1,2016-04-18,9000,as left,compressor tip clearance,3 o'clock,0.62
O-1,2016-04-18,9000,as left,compressor tip clearance,6 Uhr,0.63`,
    used: [
      'O-1 2016-04-18 9000.0 thrust_play left 0.12',
      'O-1 2016-04-18 9000.0 tip_compressor left 12 0.61',
      'O-1 2016-04-18 9000.0 tip_compressor left 3 0.62',
      'O-1 2016-04-18 9000.0 tip_compressor left 6 0.63',
    ],
    held: [
      '3 | stage | perhaps | not understood; expected: as found or as left',
      '4 | characteristic | colour of the paint | not understood; expected: a characteristic',
      '5 | position | north | not understood; expected: a clock position',
    ],
    cells: [7, 4, 0],
  },
];
