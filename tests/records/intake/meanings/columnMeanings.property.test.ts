import { describe, expect, it } from 'vitest';
import { builtInCharacteristics } from '../../../../lib/records/characteristics';
import { columnMeanings } from '../../../../lib/records/intake/columnMeanings';
import { wideColumn } from '../../../../lib/records/wideColumns';
import { englishSheets } from './sheets/englishSheets';
import { germanSheets } from './sheets/germanSheets';
import { northernSheets } from './sheets/northernSheets';
import { romanceSheets } from './sheets/romanceSheets';
import { type Sheet, samplesOf, shortForm } from './sheets/sheet';

const sheets = [...englishSheets, ...germanSheets, ...romanceSheets, ...northernSheets];

function shortForms(sheet: Sheet): readonly string[] {
  return columnMeanings(sheet.columns, samplesOf(sheet), builtInCharacteristics).map(shortForm);
}

function expectSame(sheet: Sheet, change: (name: string) => string) {
  const changed = { ...sheet, columns: sheet.columns.map(change) };
  expect(shortForms(changed), changed.columns.join(' | ')).toEqual(shortForms(sheet));
}

/** A name whose words stand apart without regard to capitals; a canonical name says mm by its underscores. */
function isPlain(name: string): boolean {
  const underscored = name.replaceAll(' ', '_');
  return wideColumn(underscored, builtInCharacteristics) === null && !/\p{Ll}\p{Lu}/u.test(name);
}

function unaccented(text: string): string {
  return text
    .normalize('NFD')
    .replace(/(?<=\p{Script=Latin})\p{M}/gu, '')
    .normalize('NFC');
}

const umlauts: readonly (readonly [string, string])[] = [
  ['ä', 'ae'],
  ['ö', 'oe'],
  ['ü', 'ue'],
  ['Ä', 'Ae'],
  ['Ö', 'Oe'],
  ['Ü', 'Ue'],
  ['ß', 'ss'],
];

describe('columnMeanings does not depend on', () => {
  it('capitals', () => {
    for (const sheet of sheets) {
      expectSame(sheet, (name) => (isPlain(name) ? name.toUpperCase() : name));
      expectSame(sheet, (name) => (isPlain(name) ? name.toLowerCase() : name));
    }
  });

  it('accents, as signs, as letters after the vowel or left off', () => {
    for (const sheet of sheets) {
      expectSame(sheet, (name) => name.normalize('NFD'));
      expectSame(sheet, unaccented);
      expectSame(sheet, (name) => umlauts.reduce((text, [from, to]) => text.replaceAll(from, to), name));
    }
  });

  it('separators between words', () => {
    for (const sheet of sheets) {
      for (const separator of ['_', '-', '  ', '\u00a0', '.', '\n']) {
        expectSame(sheet, (name) =>
          isPlain(name)
            ? name
                .split(' / ')
                .map((layer) => layer.replace(/(?<=\p{L}) (?=\p{L})/gu, separator))
                .join(' / ')
            : name,
        );
      }
    }
  });

  it('the order of columns, where none leans on the one before it', () => {
    const free = sheets.filter((sheet) => !shortForms(sheet).some((_, index) => leans(sheet, index)));
    expect(free.length).toBeGreaterThan(30);
    for (const sheet of free) {
      const backwards: Sheet = {
        ...sheet,
        columns: [...sheet.columns].reverse(),
        lines: (sheet.lines ?? []).map((line) =>
          sheet.columns.map((_, index) => line[index] ?? '').reverse(),
        ),
      };
      expect([...shortForms(backwards)].reverse(), sheet.name).toEqual(shortForms(sheet));
    }
  });
});

function leans(sheet: Sheet, index: number): boolean {
  const meaning = columnMeanings(sheet.columns, samplesOf(sheet), builtInCharacteristics)[index];
  return meaning?.evidence.includes('carried from column') === true;
}
