import { type Sheet, sheet } from './sheet';

export const romanceSheets: readonly Sheet[] = [
  sheet(
    'French wide',
    'N° de série|Date|Heures de marche|Jeu axial avant démontage (mm)|Jeu axial après remontage (mm)|Faux-rond avant (1/100 mm)|Faux-rond après (1/100 mm)|Observations',
    'unit|date|unit_hours|reading thrust_play found mm|reading thrust_play left mm|reading runout found 0.01mm|reading runout left 0.01mm|remarks',
  ),
  sheet(
    'French tips by the dial',
    "Turbosoufflante|Date|Heures|Jeu en bout d'aubes compresseur 12h avant démontage|Jeu en bout d'aubes compresseur 3h avant démontage|Jeu en bout d'ailettes turbine 9 heures après remontage",
    'unit|date|unit_hours|reading tip_compressor found 12|reading tip_compressor found 3|reading tip_turbine left 9',
  ),
  sheet(
    'French long, unaccented',
    'Numero de serie|Date de visite|Heures moteur|Etape|Grandeur|Position|Valeur|Unite|Atelier',
    'unit|date|engine_hours|stage|characteristic|clock|value|uom|workshop',
    'T1|12/03/2019|21000|avant|jeu axial||0,3|mm|Nord',
    'T1|12/03/2019|21000|apres|jeu turbine|haut|0,6|mm|Nord',
    'T1|12/03/2019|21000|apres|jeu turbine|gauche|0,6|mm|Nord',
  ),
  sheet(
    'French engine, bank and kind',
    "Moteur|Banc|Turbo|Date|Heures turbo|Motif|Dépassement de l'écrou avant (mm)|Dépassement de l'écrou après (mm)",
    'engine|bank|unit|date|unit_hours|kind|reading nut_stand_out found mm|reading nut_stand_out left mm',
    'M1|A|T1|2019-03-12|12000|planifié|1,2|1,1',
    'M1|B|T2|2019-03-14|12000|avarie|1,3|1,1',
  ),
  sheet(
    'French two header rows with sides',
    'Repère / Rotor|Repère / Date|Relevé avant / Jeu compresseur haut|Relevé avant / droite|Relevé avant / bas|Relevé avant / gauche',
    'unit|date|reading tip_compressor found 12|reading tip_compressor found 3?|reading tip_compressor found 6|reading tip_compressor found 9?',
  ),
  sheet(
    'Spanish wide',
    'Nº serie|Fecha|Horas de servicio|Juego axial antes (mm)|Juego axial después (mm)|Alabeo antes (µm)|Excentricidad después (µm)|Observaciones',
    'unit|date|unit_hours|reading thrust_play found mm|reading thrust_play left mm|reading runout found um|reading runout left um|remarks',
  ),
  sheet(
    'Spanish tips',
    'Turbocompresor|Fecha|Horas motor|Holgura de punta compresor 12 h antes de desmontaje|Holgura de punta turbina 6 h tras montaje|Holgura punta turbina izquierda tras montaje',
    'unit|date|engine_hours|reading tip_compressor found 12|reading tip_turbine left 6|reading tip_turbine left 9?',
  ),
  sheet(
    'Spanish long, unidad as unit of measure',
    'Numero de serie|Fecha|Horas|Estado|Caracteristica|Posicion|Valor|Unidad|Taller',
    'unit|date|unit_hours|stage|characteristic|clock|value|uom|workshop',
    'S1|03-04-2019|9000|antes|juego axial||0,3|mm|Sur',
    'S1|03-04-2019|9000|despues|holgura compresor|arriba|0,5|mm|Sur',
    'S1|03-04-2019|9000|despues|holgura compresor|derecha|0,5|mm|Sur',
  ),
  sheet(
    'Spanish mixed',
    'Central|Motor|Rotor|Fecha|Horas rotor|Medida|Antes|Después',
    'site|engine|unit|date|unit_hours|characteristic|value found|value left',
    'C1|M1|R1|2020-01-01|9000|Juego axial|0,3|0,2',
    'C1|M1|R1|2020-01-01|9000|Excentricidad|0,03|0,02',
  ),
];
