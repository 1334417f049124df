import { type Sheet, sheet } from './sheet';

export const northernSheets: readonly Sheet[] = [
  sheet(
    'Norwegian wide',
    'Serienr|Dato|Driftstimer|Aksialklaring før (mm)|Aksialklaring etter (mm)|Kast før (my)|Kast etter (my)|Merknad',
    'unit|date|unit_hours|reading thrust_play found mm|reading thrust_play left mm|reading runout found um|reading runout left um|remarks',
  ),
  sheet(
    'Norwegian tips',
    'Turbolader nr|Dato|Motortimer|Spissklaring kompressor kl. 12 før demontering|Spissklaring kompressor kl. 3 før demontering|Spissklaring turbin høyre etter montering|Spissklaring turbin venstre etter montering|Spissklaring turbin bunn etter montering',
    'unit|date|engine_hours|reading tip_compressor found 12|reading tip_compressor found 3|reading tip_turbine left 3?|reading tip_turbine left 9?|reading tip_turbine left 6',
  ),
  sheet(
    'Norwegian long',
    'Rotor|Dato|Timer|Tilstand|Måling|Posisjon|Verdi|Måleenhet|Verksted',
    'unit|date|unit_hours|stage|characteristic|clock|value|uom|workshop',
    'R1|12.03.2019|9000|før demontering|aksialklaring||0,3|mm|Vest',
    'R1|12.03.2019|9000|etter montering|klaring kompressor|oppe|0,5|mm|Vest',
    'R1|12.03.2019|9000|etter montering|klaring kompressor|venstre|0,5|mm|Vest',
  ),
  sheet(
    'Norwegian two header rows',
    'Skip|Motor|Rotor|Overhalingsdato|Gangtimer|Før / Mutterutstikk (mm)|Før / Kast (mm)|Etter / Mutterutstikk (mm)|Etter / Kast (mm)',
    'site|engine|unit|date|unit_hours|reading nut_stand_out found mm|reading runout found mm|reading nut_stand_out left mm|reading runout left mm',
  ),
  sheet(
    'Russian wide',
    'Зав. №|Дата|Наработка, ч|Осевой зазор до разборки, мм|Осевой зазор после сборки, мм|Биение вала до, мкм|Биение вала после, мкм|Примечание',
    'unit|date|unit_hours|reading thrust_play found mm|reading thrust_play left mm|reading runout found um|reading runout left um|remarks',
  ),
  sheet(
    'Russian tips',
    'Турбокомпрессор №|Дата ремонта|Наработка двигателя|Зазор по концам лопаток турбины 12 ч до разборки, мм|Зазор по концам лопаток компрессора слева до разборки, мм|Зазор по концам лопаток компрессора сверху после сборки, мм',
    'unit|date|engine_hours|reading tip_turbine found 12 mm|reading tip_compressor found 9? mm|reading tip_compressor left 12 mm',
  ),
  sheet(
    'Russian long',
    'Ротор|Дата|Часы|Этап|Параметр|Положение|Значение|Ед. изм.|Исполнитель',
    'unit|date|unit_hours|stage|characteristic|clock|value|uom|workshop',
    'Р1|12.03.2019|9000|до разборки|осевой люфт||0,3|мм|Цех 2',
    'Р1|12.03.2019|9000|после сборки|зазор турбины|верх|0,5|мм|Цех 2',
    'Р1|12.03.2019|9000|после сборки|зазор турбины|право|0,5|мм|Цех 2',
  ),
  sheet(
    'Russian mixed',
    'Станция|Двигатель|Ротор|Дата|Показатель|До|После|Замечания',
    'site|engine|unit|date|characteristic|value found|value left|remarks',
    'С1|Д2|Р1|12.03.2019|осевой разбег|0,3|0,2|',
    'С1|Д2|Р1|12.03.2019|биение|0,03|0,02|в норме',
  ),
  sheet(
    'Russian stock list',
    'Поз.|Наименование детали|Количество|Цена',
    'unused|unused|unused|unused',
    '1|Кольцо|3|120',
  ),
];
