import fc from 'fast-check';
import { millimetresPer } from '../../../../lib/records/lengthUnits';
import { encodeAs, encodings, type TestEncoding } from '../../../records/intake/layout/encodeAs';
import { clocks, type Place, places, type TrueOverhaul } from './fleetTable';
import { type Language, languages, type SheetWords, sheetWords } from './sheetWords';

/** How a workshop writes its sheet. */
export interface Dialect {
  readonly encoding: TestEncoding;
  readonly delimiter: ',' | ';' | '\t' | '|';
  readonly decimal: '.' | ',';
  readonly thousands: string;
  readonly day: 'iso' | 'dotted' | 'slashed day first' | 'slashed month first' | 'month name';
  readonly uom: keyof typeof millimetresPer;
  readonly uomIn: 'brackets' | 'row' | 'cells' | 'nowhere';
  readonly form: 'wide' | 'wide with stages above' | 'long';
  readonly language: Language;
  readonly sides: 'clock' | 'compressor end' | 'turbine end';
  readonly quoteAll: boolean;
}

const uomNames = { mm: 'mm', um: 'µm', in: 'in', mil: 'thou', '0.01mm': '1/100 mm' } as const;
const decimals = { mm: 3, um: 0, in: 5, mil: 2, '0.01mm': 1 } as const;

export const dialect: fc.Arbitrary<Dialect> = fc
  .record({
    encoding: fc.constantFrom(...encodings),
    delimiter: fc.constantFrom(',' as const, ';' as const, '\t' as const, '|' as const),
    decimal: fc.constantFrom('.' as const, ',' as const),
    thousands: fc.constantFrom('', '', ' ', '\u00a0', "'", 'other'),
    day: fc.constantFrom<Dialect['day'][]>(
      'iso',
      'dotted',
      'slashed day first',
      'slashed month first',
      'month name',
    ),
    uom: fc.constantFrom<Dialect['uom'][]>('mm', 'um', 'in', 'mil', '0.01mm'),
    uomIn: fc.constantFrom<Dialect['uomIn'][]>('brackets', 'row', 'cells', 'nowhere'),
    form: fc.constantFrom<Dialect['form'][]>('wide', 'wide with stages above', 'long'),
    language: fc.constantFrom(...languages),
    sides: fc.constantFrom<Dialect['sides'][]>('clock', 'compressor end', 'turbine end'),
    quoteAll: fc.boolean(),
  })
  .map((one) => ({
    ...one,
    thousands: one.thousands === 'other' ? (one.decimal === '.' ? ',' : '.') : one.thousands,
    language: languageOf(one.encoding, one.language),
  }));

/** windows-1252 has no Cyrillic letters and windows-1251 no accented ones. */
function languageOf(encoding: TestEncoding, language: Language): Language {
  if (encoding === 'windows-1251') return 'russian';
  return encoding === 'windows-1252' && language === 'russian' ? 'german' : language;
}

/** Digits in groups of three, decimal sign and decimals. */
export function written(value: number, places: number, { decimal, thousands }: Dialect): string {
  const [whole = '', fraction] = value.toFixed(places).split('.');
  const grouped = [...whole].map((digit, at) =>
    at > 0 && (whole.length - at) % 3 === 0 ? thousands + digit : digit,
  );
  return grouped.join('') + (fraction === undefined ? '' : decimal + fraction);
}

/** What a size comes to when it is written in the dialect's unit of measure, in mm. */
export function writtenSize(
  size_um: number,
  { uom }: Dialect,
): { readonly inUnit: number; readonly mm: number } {
  const inUnit = Number((size_um / 1000 / millimetresPer[uom]).toFixed(decimals[uom]));
  return { inUnit, mm: inUnit * millimetresPer[uom] };
}

export function writtenDay(day: Date, one: Dialect): string {
  const [year, month, date] = [day.getUTCFullYear(), day.getUTCMonth() + 1, day.getUTCDate()];
  const two = (number: number) => String(number).padStart(2, '0');
  if (one.day === 'iso') return `${year}-${two(month)}-${two(date)}`;
  if (one.day === 'dotted') return `${two(date)}.${two(month)}.${year}`;
  if (one.day === 'slashed day first') return `${two(date)}/${two(month)}/${year}`;
  if (one.day === 'slashed month first') return `${two(month)}/${two(date)}/${year}`;
  return `${date} ${sheetWords[one.language].months[month - 1]} ${year}`;
}

function position(clock: (typeof clocks)[number], one: Dialect, words: SheetWords): string {
  if (one.sides === 'clock')
    return one.language === 'norwegian' ? `${words.oClock} ${clock}` : `${clock} ${words.oClock}`;
  // From the turbine end the 3 o'clock position is on the left.
  const at = clocks.indexOf(clock);
  return words.sides[one.sides === 'turbine end' && at % 2 === 1 ? 4 - at : at] as string;
}

function cell(size: number | null | 'nothing', one: Dialect, words: SheetWords): string {
  if (size === null) return '';
  if (size === 'nothing') return words.nothing;
  const number = written(writtenSize(size, one).inUnit, decimals[one.uom], one);
  return one.uomIn === 'cells' && one.form !== 'long' ? `${number} ${uomNames[one.uom]}` : number;
}

/** Name of a unit in the table of that number. */
export const unitName = (table: number, unit: number) => `T${table}-${unit + 1}`;

/** Writes a table of overhauls in a dialect, encoded. */
export function writeSheet(table: readonly TrueOverhaul[], one: Dialect, number: number): Uint8Array {
  const words = sheetWords[one.language];
  const rows =
    one.form === 'long' ? longRows(table, one, words, number) : wideRows(table, one, words, number);
  const needsQuotes = new RegExp(`["\\n${one.delimiter === '|' ? '\\|' : one.delimiter}]`);
  const line = (cells: readonly string[]) =>
    cells
      .map((text) => (one.quoteAll || needsQuotes.test(text) ? `"${text.replaceAll('"', '""')}"` : text))
      .join(one.delimiter);
  return encodeAs(`${rows.map(line).join('\r\n')}\r\n`, one.encoding);
}

function wideRows(
  table: readonly TrueOverhaul[],
  one: Dialect,
  words: SheetWords,
  number: number,
): string[][] {
  const brackets = one.uomIn === 'brackets' ? ` (${uomNames[one.uom]})` : '';
  const above = one.form === 'wide with stages above';
  const ordered = [...places].sort((a, b) =>
    above && a.stage !== b.stage ? (a.stage < b.stage ? -1 : 1) : 0,
  );
  const name = ({ quantity, stage, clock }: Place) =>
    [
      words.characteristic[quantity],
      above ? '' : words.stage[stage],
      clock === null ? '' : position(clock, one, words),
    ]
      .filter((word) => word !== '')
      .join(' ') + brackets;
  const row = ({ unit, day, hours, sizes_um }: TrueOverhaul) => [
    unitName(number, unit),
    writtenDay(day, one),
    written(hours, 0, one),
    ...ordered.map((place) => cell(sizes_um[places.indexOf(place)] ?? null, one, words)),
    '',
  ];
  const stageRow = [
    '',
    '',
    '',
    ...ordered.map(({ stage }, at) => (ordered[at - 1]?.stage === stage ? '' : words.stage[stage])),
    '',
  ];
  return [
    ...(above ? [stageRow] : []),
    [words.unit, words.date, words.hours, ...ordered.map(name), words.remarks],
    ...(one.uomIn === 'row' ? [['', '', '', ...ordered.map(() => uomNames[one.uom]), '']] : []),
    ...table.map(row),
  ];
}

function longRows(
  table: readonly TrueOverhaul[],
  one: Dialect,
  words: SheetWords,
  number: number,
): string[][] {
  const hasColumn = one.uomIn === 'cells' || one.uomIn === 'row';
  const brackets = one.uomIn === 'brackets' ? ` [${uomNames[one.uom]}]` : '';
  const header = [
    words.unit,
    words.date,
    words.hours,
    words.stageColumn,
    words.characteristicColumn,
    words.positionColumn,
    words.valueColumn + brackets,
    ...(hasColumn ? [words.uomColumn] : []),
  ];
  const rows = table.flatMap(({ unit, day, hours, sizes_um }) =>
    places.flatMap(({ quantity, stage, clock }, at) => {
      const text = cell(sizes_um[at] ?? null, one, words);
      if (text === '') return [];
      return [
        [
          unitName(number, unit),
          writtenDay(day, one),
          written(hours, 0, one),
          words.stage[stage],
          words.characteristic[quantity],
          clock === null ? '' : position(clock, one, words),
          text,
          ...(hasColumn ? [uomNames[one.uom]] : []),
        ],
      ];
    }),
  );
  return [header, ...rows];
}
