import type { SheetCase } from './SheetCase';

const headers: readonly (readonly [
  language: string,
  names: readonly string[],
  goes: string,
  doesNotGo: string,
])[] = [
  ['English', ['serial', 'date', 'hours', 'thrust play as found'], 'goes', 'does not go'],
  ['German', ['Läufer-Nr.', 'Datum', 'Betriebsstunden', 'Axialspiel vor Demontage'], 'geht', 'geht nicht'],
  [
    'French',
    ['N° de série', 'Date de visite', 'Heures de marche', 'Jeu axial avant démontage'],
    'passe',
    'ne passe pas',
  ],
  [
    'Spanish',
    ['Número de serie', 'Fecha', 'Horas de servicio', 'Juego axial antes de desmontaje'],
    'pasa',
    'no pasa',
  ],
  ['Norwegian', ['Serienummer', 'Dato', 'Driftstimer', 'Aksialklaring før demontering'], 'går', 'går ikke'],
  [
    'Russian',
    ['Серийный номер', 'Дата ремонта', 'Наработка', 'Осевой зазор до разборки'],
    'проходит',
    'не проходит',
  ],
];
const interval = 'I-1 2019-03-14 9000.0 thrust_play found 0.3..0.35';
const onlyOne = 'a feeler reading needs one that goes and one that does not';

const inSixLanguages = headers.flatMap(
  ([language, [unit, date, hours, play], goes, doesNotGo]): SheetCase[] => [
    {
      title: `${language}: goes and does not go in two columns, in mm`,
      text: `${unit};${date};${hours};${play} ${goes} (mm);${play} ${doesNotGo} (mm)\nI-1;14.03.2019;9000;0,30;0,35`,
      used: [interval],
      cells: [1, 1, 0],
      noted: [
        `2 | ${play} ${goes} (mm) & ${play} ${doesNotGo} (mm) | goes 0,30, does not go 0,35 | read as an interval: goes, does not go`,
      ],
    },
    {
      title: `${language}: the reading's name over two columns, no unit of measure`,
      text: `;;;${play};\n${unit};${date};${hours};${goes};${doesNotGo}\nI-1;14.03.2019;9000;0,30;0,35\nI-2;14.03.2019;9000;0,35;0,40`,
      used: [interval, 'I-2 2019-03-14 9000.0 thrust_play found 0.35..0.4'],
      cells: [2, 2, 0],
    },
    {
      title: `${language}: the second column says only that it does not go, hundredths of a mm`,
      text: `${unit};${date};${hours};${play} ${goes} (1/100 mm);${doesNotGo}\nI-1;14.03.2019;9000;30;35`,
      used: [interval],
      cells: [1, 1, 0],
    },
  ],
);

/** Readings of a feeler in two columns, the one that goes and the one that does not. */
export const intervalCases: readonly SheetCase[] = [
  ...inSixLanguages,
  {
    title: 'a feeler reading with one end, a word, ends the wrong way round, and a unit in the cell',
    text: `serial,date,hours,thrust play found goes (mm),thrust play found does not go (mm),runout left (mm)
I-1,2019-03-14,9000,0.30,,0.01
I-2,2019-03-14,9000,n/a,N/A,0.02
I-3,2019-03-14,9000,0.40,0.35,0.03
I-4,2019-03-14,9000,12 mil,14 mil,0.04
I-5,2019-03-14,9000,,,0.05
I-6,2019-03-14,9000,0.30,n/a,0.06`,
    used: [
      'I-1 2019-03-14 9000.0 runout left 0.01',
      'I-2 2019-03-14 9000.0 runout left 0.02',
      'I-3 2019-03-14 9000.0 runout left 0.03',
      'I-4 2019-03-14 9000.0 thrust_play found 0.3048..0.3556',
      'I-4 2019-03-14 9000.0 runout left 0.04',
      'I-5 2019-03-14 9000.0 runout left 0.05',
      'I-6 2019-03-14 9000.0 runout left 0.06',
    ],
    held: [
      `2 | thrust play found goes (mm) & thrust play found does not go (mm) | goes 0.30 | ${onlyOne}`,
      '4 | thrust play found goes (mm) & thrust play found does not go (mm) | goes 0.40, does not go 0.35 | the feeler that does not go is not thicker than the one that goes',
      `7 | thrust play found goes (mm) & thrust play found does not go (mm) | goes 0.30, does not go n/a | ${onlyOne}`,
    ],
    cells: [11, 7, 1],
  },
  {
    title: 'four clock positions, each in two columns',
    text: `serial,date,hours,compressor tip clearance as left 12 o'clock goes (mm),does not go,3 o'clock goes,does not go,6 o'clock goes,does not go,9 o'clock goes,does not go
I-1,2019-03-14,9000,0.50,0.55,0.55,0.60,0.60,0.65,0.45,0.50`,
    used: [
      'I-1 2019-03-14 9000.0 tip_compressor left 12 0.5..0.55',
      'I-1 2019-03-14 9000.0 tip_compressor left 3 0.55..0.6',
      'I-1 2019-03-14 9000.0 tip_compressor left 6 0.6..0.65',
      'I-1 2019-03-14 9000.0 tip_compressor left 9 0.45..0.5',
    ],
    cells: [4, 4, 0],
  },
  {
    title: 'a column that goes and none that does not',
    text: `serial,date,hours,thrust play found goes (mm),runout left (mm)
I-1,2019-03-14,9000,0.30,0.01`,
    used: ['I-1 2019-03-14 9000.0 runout left 0.01'],
    held: [`2 | thrust play found goes (mm) | goes 0.30 | ${onlyOne}`],
    cells: [2, 1, 0],
  },
];
