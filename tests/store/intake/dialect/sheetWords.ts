/** Header and cell words of a workshop in one language. */
export interface SheetWords {
  readonly unit: string;
  readonly date: string;
  readonly hours: string;
  readonly remarks: string;
  readonly stage: Readonly<Record<'found' | 'left', string>>;
  readonly characteristic: Readonly<Record<'thrust_play' | 'runout' | 'tip_turbine', string>>;
  readonly stageColumn: string;
  readonly characteristicColumn: string;
  readonly positionColumn: string;
  readonly valueColumn: string;
  readonly uomColumn: string;
  /** Top, right, bottom and left side. */
  readonly sides: readonly [string, string, string, string];
  /** What a dial position is called after its number. */
  readonly oClock: string;
  readonly nothing: string;
  /** Months as they are written between day and year. */
  readonly months: readonly string[];
}

export const languages = ['english', 'german', 'french', 'spanish', 'norwegian', 'russian'] as const;
export type Language = (typeof languages)[number];

export const sheetWords: Readonly<Record<Language, SheetWords>> = {
  english: {
    unit: 'Serial no.',
    date: 'Date of overhaul',
    hours: 'Running hours',
    remarks: 'Remarks',
    stage: { found: 'as found', left: 'as left' },
    characteristic: {
      thrust_play: 'Axial play',
      runout: 'Shaft runout',
      tip_turbine: 'Turbine tip clearance',
    },
    stageColumn: 'Stage',
    characteristicColumn: 'Measurement',
    positionColumn: 'Position',
    valueColumn: 'Value',
    uomColumn: 'Unit of measure',
    sides: ['top', 'right side', 'bottom', 'left side'],
    oClock: "o'clock",
    nothing: 'n/a',
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  },
  german: {
    unit: 'Läufer-Nr.',
    date: 'Datum',
    hours: 'Betriebsstunden',
    remarks: 'Bemerkung',
    stage: { found: 'vor Demontage', left: 'nach Montage' },
    characteristic: { thrust_play: 'Axialspiel', runout: 'Rundlauf', tip_turbine: 'Spalt Turbine' },
    stageColumn: 'Zustand',
    characteristicColumn: 'Merkmal',
    positionColumn: 'Lage',
    valueColumn: 'Messwert',
    uomColumn: 'Maßeinheit',
    sides: ['oben', 'rechts', 'unten', 'links'],
    oClock: 'Uhr',
    nothing: 'nicht gemessen',
    months: [
      'Januar',
      'Februar',
      'März',
      'April',
      'Mai',
      'Juni',
      'Juli',
      'August',
      'September',
      'Oktober',
      'November',
      'Dezember',
    ],
  },
  french: {
    unit: 'N° de série',
    date: 'Date de visite',
    hours: 'Heures de marche',
    remarks: 'Remarques',
    stage: { found: 'avant démontage', left: 'après remontage' },
    characteristic: {
      thrust_play: 'Jeu axial',
      runout: 'Faux rond',
      tip_turbine: "Jeu en bout d'aubes turbine",
    },
    stageColumn: 'État',
    characteristicColumn: 'Grandeur',
    positionColumn: 'Position',
    valueColumn: 'Valeur',
    uomColumn: 'Unité de mesure',
    sides: ['haut', 'droite', 'bas', 'gauche'],
    oClock: 'heures',
    nothing: 'non mesuré',
    months: [
      'janvier',
      'février',
      'mars',
      'avril',
      'mai',
      'juin',
      'juillet',
      'août',
      'septembre',
      'octobre',
      'novembre',
      'décembre',
    ],
  },
  spanish: {
    unit: 'Número de serie',
    date: 'Fecha',
    hours: 'Horas de servicio',
    remarks: 'Observaciones',
    stage: { found: 'antes de desmontaje', left: 'después de montaje' },
    characteristic: {
      thrust_play: 'Juego axial',
      runout: 'Alabeo eje',
      tip_turbine: 'Holgura punta turbina',
    },
    stageColumn: 'Estado',
    characteristicColumn: 'Magnitud',
    positionColumn: 'Posición',
    valueColumn: 'Valor',
    uomColumn: 'Unidad de medida',
    sides: ['arriba', 'derecha', 'abajo', 'izquierda'],
    oClock: 'horas',
    nothing: 's/d',
    months: [
      'enero',
      'febrero',
      'marzo',
      'abril',
      'mayo',
      'junio',
      'julio',
      'agosto',
      'septiembre',
      'octubre',
      'noviembre',
      'diciembre',
    ],
  },
  norwegian: {
    unit: 'Serienummer',
    date: 'Dato',
    hours: 'Driftstimer',
    remarks: 'Merknader',
    stage: { found: 'før demontering', left: 'etter montering' },
    characteristic: { thrust_play: 'Aksialklaring', runout: 'Akselkast', tip_turbine: 'Spissklaring turbin' },
    stageColumn: 'Tilstand',
    characteristicColumn: 'Måling',
    positionColumn: 'Posisjon',
    valueColumn: 'Verdi',
    uomColumn: 'Måleenhet',
    sides: ['topp', 'høyre', 'bunn', 'venstre'],
    oClock: 'kl',
    nothing: 'ikke målt',
    months: [
      'januar',
      'februar',
      'mars',
      'april',
      'mai',
      'juni',
      'juli',
      'august',
      'september',
      'oktober',
      'november',
      'desember',
    ],
  },
  russian: {
    unit: 'Серийный номер',
    date: 'Дата ремонта',
    hours: 'Наработка',
    remarks: 'Примечания',
    stage: { found: 'до разборки', left: 'после сборки' },
    characteristic: {
      thrust_play: 'Осевой зазор',
      runout: 'Биение вала',
      tip_turbine: 'Зазор по лопаткам турбины',
    },
    stageColumn: 'Этап',
    characteristicColumn: 'Параметр',
    positionColumn: 'Положение',
    valueColumn: 'Значение',
    uomColumn: 'Ед. изм.',
    sides: ['верх', 'право', 'низ', 'лево'],
    oClock: 'ч',
    nothing: 'не измерено',
    months: [
      'января',
      'февраля',
      'марта',
      'апреля',
      'мая',
      'июня',
      'июля',
      'августа',
      'сентября',
      'октября',
      'ноября',
      'декабря',
    ],
  },
};
