import { type SheetCase, viewingEndOf } from './SheetCase';

/** Headers and words in the other languages. */
export const languageCases: readonly SheetCase[] = [
  {
    title: 'French headers, decimal comma, hours with narrow no-break spaces',
    text: `N° de série;Date de visite;Heures de marche;Jeu axial avant démontage (mm);Jeu axial après remontage (mm);Faux rond après remontage (mm)
F-1;25/01/2016;9\u202f850;0,24;0,14;non mesuré
F-1;30/06/2017;19\u202f420;0,26;0,15;0,010`,
    used: [
      'F-1 2016-01-25 9850.0 thrust_play found 0.24',
      'F-1 2016-01-25 9850.0 thrust_play left 0.14',
      'F-1 2017-06-30 19420.0 thrust_play found 0.26',
      'F-1 2017-06-30 19420.0 thrust_play left 0.15',
      'F-1 2017-06-30 19420.0 runout left 0.01',
    ],
    cells: [6, 5, 1],
    noted: ['2 | Faux rond après remontage (mm) | non mesuré | no reading: ‘non mesuré’'],
  },
  {
    title: 'Spanish headers and month names',
    text: `Número de serie;Fecha;Horas de servicio;Juego axial antes (mm);Juego axial después (mm)
S-1;3 de marzo de 2015;8.760;0,21;0,12
S-1;17 dic 2016;17.210;entre 0,22 y 0,25;s/d`,
    used: [
      'S-1 2015-03-03 8760.0 thrust_play found 0.21',
      'S-1 2015-03-03 8760.0 thrust_play left 0.12',
      'S-1 2016-12-17 17210.0 thrust_play found 0.22..0.25',
    ],
    cells: [4, 3, 1],
  },
  {
    title: 'Norwegian headers',
    text: `Serienr;Dato;Driftstimer;Aksialklaring før demontering [mm];Aksialklaring etter montering [mm];Kast etter montering [µm]
N-1;17.05.2014;9100;0,19;0,11;12
N-1;24.12.2015;18300;0,2 til 0,22;0,12;ikke målt`,
    used: [
      'N-1 2014-05-17 9100.0 thrust_play found 0.19',
      'N-1 2014-05-17 9100.0 thrust_play left 0.11',
      'N-1 2014-05-17 9100.0 runout left 0.012',
      'N-1 2015-12-24 18300.0 thrust_play found 0.2..0.22',
      'N-1 2015-12-24 18300.0 thrust_play left 0.12',
    ],
    cells: [6, 5, 1],
  },
  {
    title: 'Russian headers with the hundredths of a millimetre in the header',
    text: `Серийный номер;Дата;Наработка, ч;Осевой зазор до разборки (1/100 мм);Осевой зазор после сборки (1/100 мм);Биение вала после сборки (мкм)
R-1;14.02.2013;7 900;23;12;15
R-1;20.09.2014;16 400;25;нет данных;18`,
    used: [
      'R-1 2013-02-14 7900.0 thrust_play found 0.23',
      'R-1 2013-02-14 7900.0 thrust_play left 0.12',
      'R-1 2013-02-14 7900.0 runout left 0.015',
      'R-1 2014-09-20 16400.0 thrust_play found 0.25',
      'R-1 2014-09-20 16400.0 runout left 0.018',
    ],
    cells: [6, 5, 1],
  },
  {
    title: 'German sides, seen from the turbine end: 3 and 9 change places, 12 and 6 do not',
    text: `Läufer;Datum;Betriebsstunden;Spalt Verdichter vor Demontage oben (mm);Spalt Verdichter vor Demontage rechts (mm);Spalt Verdichter vor Demontage unten (mm);Spalt Verdichter vor Demontage links (mm)
D-1;28.03.2016;9000;0,61;0,55;0,52;0,58`,
    used: [],
    held: [
      '2 | Spalt Verdichter vor Demontage links (mm) | 0,58 | waits for an answer: left and right seen from which end',
      '2 | Spalt Verdichter vor Demontage oben (mm) | 0,61 | only 2 of 4 clock positions: three are needed for the mean and the offset',
      '2 | Spalt Verdichter vor Demontage rechts (mm) | 0,55 | waits for an answer: left and right seen from which end',
      '2 | Spalt Verdichter vor Demontage unten (mm) | 0,52 | only 2 of 4 clock positions: three are needed for the mean and the offset',
    ],
    asked: [
      viewingEndOf(
        'Spalt Verdichter vor Demontage rechts (mm), Spalt Verdichter vor Demontage links (mm)',
        2,
      ),
    ],
    cells: [4, 0, 0],
    answered: [
      {
        answers: { 'viewing end': 'turbine end' },
        used: [
          'D-1 2016-03-28 9000.0 tip_compressor found 12 0.61',
          'D-1 2016-03-28 9000.0 tip_compressor found 9 0.55',
          'D-1 2016-03-28 9000.0 tip_compressor found 6 0.52',
          'D-1 2016-03-28 9000.0 tip_compressor found 3 0.58',
        ],
        cells: [4, 4, 0],
      },
      {
        answers: { 'viewing end': 'compressor end' },
        used: [
          'D-1 2016-03-28 9000.0 tip_compressor found 12 0.61',
          'D-1 2016-03-28 9000.0 tip_compressor found 3 0.55',
          'D-1 2016-03-28 9000.0 tip_compressor found 6 0.52',
          'D-1 2016-03-28 9000.0 tip_compressor found 9 0.58',
        ],
        cells: [4, 4, 0],
      },
    ],
  },
];
