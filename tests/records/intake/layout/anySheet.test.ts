import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodeAs, encodings, type TestEncoding } from './encodeAs';
import { mustRead } from './readSheet';
import { sheetText } from './sheetText';

interface Scenario {
  readonly encoding: TestEncoding;
  readonly delimiter: string;
  readonly lineEnd: string;
  readonly quoteAll: boolean;
  readonly endsWithLineEnd: boolean;
  readonly statesDelimiter: boolean;
  readonly preamble: readonly ((delimiter: string) => string)[];
  readonly hasGroups: boolean;
  readonly hasUnitsRow: boolean;
  readonly isRussian: boolean;
  readonly rows: readonly (readonly string[])[];
  /** Rows before which the header comes again, a blank line stands, or a page number. */
  readonly interruptions: readonly (readonly [number, 'header' | 'blank' | 'page'])[];
}

const western = {
  groups: ['As found', 'As left'],
  names: ['Unit', 'Date', 'Hours', 'Größe', 'Runout', 'Größe', 'Runout', 'Remarks'],
};
const russian = {
  groups: ['До разборки', 'После сборки'],
  names: ['Агрегат', 'Дата', 'Наработка', 'Разбег', 'Биение', 'Разбег', 'Биение', 'Примечание'],
};
const unitsRow = ['', '', 'h', 'mm', '[µm]', 'mm', '[µm]', ''];

const reading = fc.oneof(
  fc.integer({ min: 0, max: 99 }).map((value) => `0,${String(value).padStart(2, '0')}`),
  fc.integer({ min: 0, max: 99 }).map((value) => `0.${String(value).padStart(2, '0')}`),
  fc.constantFrom('', 'n/a', '<0,02', '0.45-0.50', '0,62*', '=1+1', '-'),
);
/** Single-byte text in which an accented letter never stands before another, so that it is not UTF-8 by chance. */
const remark = fc
  .array(
    fc.constantFrom(
      'rub ',
      'Spiel größer ',
      'a;b',
      'a,b',
      'tab\there ',
      'x|y',
      '"C" ',
      '\n',
      '€ 5 ',
      'déjà ',
      '’s ',
    ),
    { maxLength: 5 },
  )
  .map((parts) => parts.join(''));
const row = fc.tuple(
  fc.constantFrom('S-1', 'S-22', 'H-2051', 'Ö-7'),
  fc.constantFrom('2019-03-14', '14.03.2019', '03/14/2019', '14 Mar 2019'),
  fc.constantFrom('12480', '12.480', '12,480', '27100H', ''),
  reading,
  reading,
  reading,
  reading,
  remark,
);
const scenario: fc.Arbitrary<Scenario> = fc.record({
  encoding: fc.constantFrom(...encodings),
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  quoteAll: fc.boolean(),
  endsWithLineEnd: fc.boolean(),
  statesDelimiter: fc.boolean(),
  preamble: fc.array(
    fc.constantFrom(
      () => 'Overhauls of the north station 2019',
      (delimiter: string) => `Liste${delimiter.repeat(7)}`,
      (delimiter: string) => `Workshop:${delimiter}North${delimiter.repeat(6)}`,
      (delimiter: string) => `Printed: 2020-01-31${delimiter.repeat(7)}`,
      () => '',
    ),
    { maxLength: 4 },
  ),
  hasGroups: fc.boolean(),
  hasUnitsRow: fc.boolean(),
  isRussian: fc.boolean(),
  rows: fc.array(row, { minLength: 1, maxLength: 25 }),
  interruptions: fc.array(
    fc.tuple(fc.integer({ min: 1, max: 24 }), fc.constantFrom('header', 'blank', 'page')),
    { maxLength: 3 },
  ),
});

/** The text with letters that windows-1251 has, where it is to be written in it. */
function written(text: string, encoding: TestEncoding): string {
  const cyrillic: Readonly<Record<string, string>> = { Ö: 'Ж', ö: 'ж', ß: 'щ', é: 'ё', à: 'а' };
  return encoding === 'windows-1251'
    ? text.replace(/[Öößéà]/g, (letter) => cyrillic[letter] as string)
    : text;
}

const seen = { runs: 0, encodings: new Set<string>() };

describe('any sheet', () => {
  it('comes back cell for cell with its line numbers, whatever its form', () => {
    fc.assert(
      fc.property(scenario, (sheet) => {
        const { encoding } = sheet;
        const isRussian = encoding === 'windows-1251' || (sheet.isRussian && encoding !== 'windows-1252');
        const { names, groups } = isRussian ? russian : western;
        const rows = sheet.rows.map((cells) => cells.map((cell) => written(cell, encoding)));
        const upper = ['', '', '', groups[0] ?? '', '', groups[1] ?? '', '', ''];
        const header = [...(sheet.hasGroups ? [upper] : []), names, ...(sheet.hasUnitsRow ? [unitsRow] : [])];
        const start = [
          ...(sheet.statesDelimiter ? [`sep=${sheet.delimiter}`] : []),
          ...sheet.preamble.map((line) => line(sheet.delimiter)),
        ];
        const parts: (string | readonly string[])[] = [...start, ...header];
        const rowParts: number[] = [];
        rows.forEach((cells, index) => {
          for (const [before, kind] of sheet.interruptions) {
            if (before !== index) continue;
            if (kind === 'header') parts.push(...header);
            else
              parts.push(
                kind === 'blank' ? sheet.delimiter.repeat(7) : `Page 1 of 2${sheet.delimiter.repeat(7)}`,
              );
          }
          rowParts.push(parts.length);
          parts.push(cells);
        });
        const { text, startLines } = sheetText({ ...sheet, parts });
        const read = mustRead(encodeAs(text, sheet.encoding));
        expect(read.layout.delimiter).toBe(sheet.delimiter);
        expect(read.layout.preambleLines).toBe(start.length);
        expect(read.layout.columns).toEqual(
          names.map((name, column) => {
            const group =
              sheet.hasGroups && column >= 3 && column <= 6 ? `${groups[column < 5 ? 0 : 1]} / ` : '';
            const unit = sheet.hasUnitsRow && unitsRow[column] !== '' ? ` / ${unitsRow[column]}` : '';
            return `${group}${name}${unit}`;
          }),
        );
        const data = read.lines.filter(({ kind }) => kind === 'data');
        expect(data.map(({ cells }) => cells)).toEqual(
          rows.map((cells) => cells.map((cell) => cell.replaceAll('\n', '\u001e'))),
        );
        expect(data.map(({ line }) => line)).toEqual(rowParts.map((part) => startLines[part]));
        seen.runs++;
        seen.encodings.add(sheet.encoding);
      }),
      { seed: 7411, numRuns: 1500 },
    );
    expect(seen.runs).toBe(1500);
    expect(seen.encodings.size).toBe(encodings.length);
  });
});
