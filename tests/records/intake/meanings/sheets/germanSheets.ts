import { type Sheet, sheet } from './sheet';

const positions = 'Spalt Verdichter 12 Uhr|3 Uhr|6 Uhr|9 Uhr'.split('|');

export const germanSheets: readonly Sheet[] = [
  sheet(
    'two header rows, positions carried',
    [
      ...['Aggregat', 'Läufer-Nr.', 'Datum', 'Betriebsstunden'].map((name) => `Werkstatt Nord / ${name}`),
      ...['Axialspiel', 'Rundlauf', ...positions].map((name) => `Vor Zerlegung / ${name}`),
      ...['Axialspiel', 'Rundlauf', ...positions].map((name) => `Nach Montage / ${name}`),
      'Bemerkung',
    ].join('|'),
    [
      'engine|unit|date|unit_hours',
      ...['found', 'left'].map((stage) =>
        [
          `reading thrust_play ${stage}`,
          `reading runout ${stage}`,
          ...['12', '3', '6', '9'].map((clock) => `reading tip_compressor ${stage} ${clock}`),
        ].join('|'),
      ),
      'remarks',
    ].join('|'),
    'G2-A|Z-51|14.03.2019|12.480|0,31|0,02|0,62|0,58|0,55|0,60|0,18|0,01|0,60|0,58|0,57|0,59|Lager erneuert',
    'G2-A|Z-51|02.11.2020|23.910|0,29|0,02|0,63|0,59|0,55|0,60|0,19|0,02|0,61|0,58|0,57|0,60|',
  ),
  sheet(
    'abbreviations',
    'ATL-Nr.|Datum|Bh|Axialspiel vor [mm]|Axialspiel nach [mm]|Schlag vor [1/100 mm]|Schlag nach [1/100 mm]|Bem.',
    'unit|date|unit_hours|reading thrust_play found mm|reading thrust_play left mm|reading runout found 0.01mm|reading runout left 0.01mm|remarks',
  ),
  sheet(
    'long',
    'Lfr-Nr|Datum|Std|Zustand|Merkmal|Lage|Messwert|Einheit|Bemerkungen',
    'unit|date|unit_hours|stage|characteristic|clock|value|uom|remarks',
    'L7|01.02.2020|9000|vor Zerlegung|Axialspiel||0,31|mm|',
    'L7|01.02.2020|9000|nach Montage|Turbinenspalt|oben|0,61|mm|neu',
    'L7|01.02.2020|9000|nach Montage|Verdichterspalt|links|0,61|mm|',
  ),
  sheet(
    'unaccented, engine meter and unit hours',
    'Motor|Motorstunden|Turbolader-Nr|Ueberholungsdatum|Laeuferstunden|Baugroesse|Standort|Rundlauffehler vor Demontage in mm|Mutterueberstand nach Zusammenbau in mm',
    'engine|engine_hours|unit|date|unit_hours|frame|site|reading runout found mm|reading nut_stand_out left mm',
  ),
  sheet(
    'sides',
    'Seriennummer|Datum|Laufzeit h|Turbinenspalt oben vor Demontage (mm)|Turbinenspalt rechts vor Demontage (mm)|Turbinenspalt unten vor Demontage (mm)|Turbinenspalt links vor Demontage (mm)',
    'unit|date|unit_hours|reading tip_turbine found 12 mm|reading tip_turbine found 3? mm|reading tip_turbine found 6 mm|reading tip_turbine found 9? mm',
  ),
  sheet(
    'limits and differences are no readings',
    'Läufer|Datum|Betriebsstunden|Axialspiel vor (mm)|Axialspiel Grenzwert (mm)|Axialspiel Differenz|Axialspiel Bemerkung',
    'unit|date|unit_hours|reading thrust_play found mm|unused|unused|remarks',
  ),
  sheet(
    'before assembly is neither stage',
    'Läufer|Datum|Rundlauf vor Montage (mm)|Rundlauf nach Montage (mm)',
    'unit|date|reading runout mm|reading runout left mm',
  ),
  sheet('stock list', 'Pos.|Bezeichnung|Menge|Einzelpreis', 'unused|unused|unused|unused', '1|Ring|3|1,20'),
];
