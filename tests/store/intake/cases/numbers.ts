import type { SheetCase } from './SheetCase';

const sign = 'waits for an answer: decimal point or comma';

/** Numbers as workshops write them, and units of measure. */
export const numberCases: readonly SheetCase[] = [
  {
    title: 'apostrophe thousands, straight and curly',
    text: `serial;date;hours;thrust play found (µm);thrust play left (µm)
A-1;2016-04-18;12'480;1'250;1'010
A-1;2018-04-18;24’960;1’310;990`,
    used: [
      'A-1 2016-04-18 12480.0 thrust_play found 1.25',
      'A-1 2016-04-18 12480.0 thrust_play left 1.01',
      'A-1 2018-04-18 24960.0 thrust_play found 1.31',
      'A-1 2018-04-18 24960.0 thrust_play left 0.99',
    ],
    cells: [4, 4, 0],
  },
  {
    title: 'feelers, one-sided intervals, brackets, two readings in a cell',
    text: `serial,date,hours,thrust play found (mm),runout left (mm),nut stand out left (mm)
A-1,2016-04-18,9000,goes 0.40 / does not go 0.45,(0.02),(0.02)
A-1,2018-04-18,18000,>0.5,<=0.03,-0.10
A-2,2016-04-18,9100,0.41 0.43,0.02/0.03,0.05 mm`,
    used: [
      'A-1 2016-04-18 9000.0 thrust_play found 0.4..0.45',
      'A-1 2016-04-18 9000.0 nut_stand_out left -0.02',
      'A-1 2018-04-18 18000.0 runout left 0..0.03',
      'A-1 2018-04-18 18000.0 nut_stand_out left -0.1',
      'A-2 2016-04-18 9100.0 nut_stand_out left 0.05',
    ],
    held: [
      '2 | runout left (mm) | (0.02) | negative, which this characteristic can never be',
      '3 | thrust play found (mm) | >0.5 | an interval needs both ends: nothing says how far above',
      '4 | runout left (mm) | 0.02/0.03 | several readings, or a fraction, in one cell',
      '4 | thrust play found (mm) | 0.41 0.43 | several readings, or a fraction, in one cell',
    ],
    cells: [9, 5, 0],
  },
  {
    title: 'no unit of measure stated and sizes that leave two: asked, then answered',
    text: `serial,date,hours,thrust play found,thrust play left
A-1,2016-04-18,9000,18,12
A-1,2018-04-18,18000,19,13`,
    used: [],
    held: [
      ...['12', '13'].map(
        (raw, index) => `${index + 2} | thrust play left | ${raw} | waits for an answer: the unit of measure`,
      ),
      ...['18', '19'].map(
        (raw, index) =>
          `${index + 2} | thrust play found | ${raw} | waits for an answer: the unit of measure`,
      ),
    ],
    asked: [
      'thrust play found, thrust play left | Which unit of measure do these readings have? | mm/um/in/mil/0.01mm | 4',
    ],
    cells: [4, 0, 0],
    answered: [
      {
        answers: { 'unit of measure': '0.01mm' },
        used: [
          'A-1 2016-04-18 9000.0 thrust_play found 0.18',
          'A-1 2016-04-18 9000.0 thrust_play left 0.12',
          'A-1 2018-04-18 18000.0 thrust_play found 0.19',
          'A-1 2018-04-18 18000.0 thrust_play left 0.13',
        ],
        cells: [4, 4, 0],
      },
      {
        answers: { 'unit of measure': 'mil' },
        used: [
          'A-1 2016-04-18 9000.0 thrust_play found 0.4572',
          'A-1 2016-04-18 9000.0 thrust_play left 0.3048',
          'A-1 2018-04-18 18000.0 thrust_play found 0.4826',
          'A-1 2018-04-18 18000.0 thrust_play left 0.3302',
        ],
        cells: [4, 4, 0],
      },
    ],
  },
  {
    title: 'inches, micrometres in four spellings',
    text: `serial,date,hours,thrust play found (in),thrust play left (inch),runout found (µm),runout left (μm),nut stand out found [micron],nut stand out left um
A-1,2016-04-18,9000,0.008,0.005,20,15,150,160`,
    used: [
      'A-1 2016-04-18 9000.0 thrust_play found 0.2032',
      'A-1 2016-04-18 9000.0 thrust_play left 0.127',
      'A-1 2016-04-18 9000.0 runout found 0.02',
      'A-1 2016-04-18 9000.0 runout left 0.015',
      'A-1 2016-04-18 9000.0 nut_stand_out found 0.15',
      'A-1 2016-04-18 9000.0 nut_stand_out left 0.16',
    ],
    cells: [6, 6, 0],
  },
  {
    title: 'units of measure in the cells go before the header’s; an unknown one is held',
    text: `serial,date,hours,thrust play found (mm),thrust play left (mm)
A-1,2016-04-18,9000,21 1/100 mm,0.12 mm
A-1,2018-04-18,18000,8.5 thou,0.02 cm`,
    used: [
      'A-1 2016-04-18 9000.0 thrust_play found 0.21',
      'A-1 2016-04-18 9000.0 thrust_play left 0.12',
      'A-1 2018-04-18 18000.0 thrust_play found 0.2159',
    ],
    held: [
      "3 | thrust play left (mm) | 0.02 cm | 'cm' is no unit that readings are taken in (mm, 0.01 mm, µm, thou, in)",
    ],
    cells: [4, 3, 0],
  },
  {
    title: 'a decimal sign that no value settles: asked, then answered',
    text: `serial;date;hours;thrust play found (µm)
A-1;2016-04-18;9000;1,050
A-1;2018-04-18;18000;1,120`,
    used: [],
    held: [`2 | thrust play found (µm) | 1,050 | ${sign}`, `3 | thrust play found (µm) | 1,120 | ${sign}`],
    asked: [
      'thrust play found (µm) | Which decimal sign do the numbers have? Examples: ‘1,050’, ‘1,120’. | decimal point/decimal comma | 2',
    ],
    cells: [2, 0, 0],
    answered: [
      {
        answers: { 'decimal sign': 'decimal point' },
        used: [
          'A-1 2016-04-18 9000.0 thrust_play found 1.05',
          'A-1 2018-04-18 18000.0 thrust_play found 1.12',
        ],
        cells: [2, 2, 0],
      },
      {
        answers: { 'decimal sign': 'decimal comma' },
        used: [
          'A-1 2016-04-18 9000.0 thrust_play found 0.00105',
          'A-1 2018-04-18 18000.0 thrust_play found 0.00112',
        ],
        cells: [2, 2, 0],
      },
    ],
  },
  {
    title: 'one row a reading with the unit of measure in a column, and goes / does not go columns',
    text: `serial,date,hours,stage,characteristic,value,uom,goes,does not go
A-1,2016-04-18,9000,found,thrust play,0.31,mm,,
A-1,2016-04-18,9000,left,thrust play,12,1/100 mm,,
A-1,2016-04-18,9000,left,runout,20,µm,,
A-1,2016-04-18,9000,found,runout,0.02,furlong,,`,
    used: [
      'A-1 2016-04-18 9000.0 thrust_play found 0.31',
      'A-1 2016-04-18 9000.0 thrust_play left 0.12',
      'A-1 2016-04-18 9000.0 runout left 0.02',
    ],
    held: ['5 | uom | furlong | not understood; expected: a unit of measure'],
    cells: [4, 3, 0],
  },
  {
    title: 'a slip of scale in a wide sheet: asked, corrected or kept as written',
    text: `serial,date,hours,thrust play found (mm),thrust play left (mm)
A-1,2016-04-18,9000,0.21,0.12
A-1,2018-04-18,18000,0.22,0.13
A-2,2016-04-18,9000,21,0.12`,
    used: [
      'A-1 2016-04-18 9000.0 thrust_play found 0.21',
      'A-1 2016-04-18 9000.0 thrust_play left 0.12',
      'A-1 2018-04-18 18000.0 thrust_play found 0.22',
      'A-1 2018-04-18 18000.0 thrust_play left 0.13',
      'A-2 2016-04-18 9000.0 thrust_play left 0.12',
    ],
    held: [
      '4 | thrust play found (mm) | 21 | waits for an answer: out of scale against the other readings, by the look of it a hundredth',
    ],
    asked: [
      'thrust play found (mm) | ‘21’ in line 4: out of scale against the other readings of thrust play. What is right? | as written/a hundredth | 1',
    ],
    cells: [6, 5, 0],
    answered: (['a hundredth', 'as written'] as const).map((answer) => ({
      answers: { scale: answer },
      used: [
        'A-1 2016-04-18 9000.0 thrust_play found 0.21',
        'A-1 2016-04-18 9000.0 thrust_play left 0.12',
        'A-1 2018-04-18 18000.0 thrust_play found 0.22',
        'A-1 2018-04-18 18000.0 thrust_play left 0.13',
        'A-2 2016-04-18 9000.0 thrust_play left 0.12',
        `A-2 2016-04-18 9000.0 thrust_play found ${answer === 'as written' ? 21 : 0.21}`,
      ],
      cells: [6, 6, 0] as const,
    })),
  },
];
