import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodyLineKind } from '../../../../lib/records/intake/layout/bodyLineKind';
import type { SheetLayout } from '../../../../lib/records/intake/types';

const layout: SheetLayout = {
  delimiter: ';',
  preambleLines: 0,
  headerRecords: 2,
  firstBodyLine: 3,
  columns: ['Unit', 'Date', 'Hours', 'As found / Play', 'As left / Play', 'Remarks'],
  evidence: [],
};
const kindOf = (...cells: readonly string[]) =>
  bodyLineKind([...cells, '', '', '', '', '', ''].slice(0, 6), layout);
const totals = [
  'Summe',
  'Total',
  'Gesamt',
  'Somme',
  'Suma',
  'Sum',
  'Итого',
  'Average',
  'Mittelwert',
  'Moyenne',
  'Media',
  'Gjennomsnitt',
  'Среднее',
  'Grand total',
  'Sous-total',
];
const footers = [
  'Page 1 of 2',
  'Seite 3 / 4',
  'Página 2',
  'Стр. 2 из 3',
  'Printed on 14 May 2021',
  'Gedruckt am 14.05.2021',
  'Imprimé le 14/05/2021',
  '* measured cold',
  'Note: gauge no. 4',
  '-----',
  'All readings taken by the second shift',
];

describe('bodyLineKind', () => {
  it.each(totals)('%s is a line of totals', (word) => {
    expect(kindOf(word)).toBe('totals');
    expect(kindOf(`${word.toUpperCase()}:`, '', '12480', '0,31')).toBe('totals');
    expect(kindOf('', word, '12480', '0,31')).toBe('totals');
    expect(kindOf(`${word} (12)`, '', '', '0,31')).toBe('totals');
  });

  it.each(footers)('%s is a note', (text) => {
    expect(kindOf(text)).toBe('footer');
  });

  it('tells header rows that come again, in any case', () => {
    expect(kindOf('Unit', 'Date', 'Hours', 'Play', 'Play', 'Remarks')).toBe('repeated header');
    expect(kindOf('', '', '', ' AS FOUND', 'as left ')).toBe('repeated header');
    expect(kindOf('Workshop East', '', '', 'As found', 'As left')).toBe('repeated header');
    expect(kindOf('Unit', 'Date', 'Hours', '0,31')).toBe('data');
    expect(kindOf('Unit')).toBe('data');
  });

  it('tells blank lines, a DOS end-of-file mark too', () => {
    expect(kindOf('', '  ', '\u00a0')).toBe('blank');
    expect(kindOf('\u001a')).toBe('blank');
  });

  it('leaves as data what may be an overhaul, to be held with a reason', () => {
    expect(kindOf('S-1')).toBe('data');
    expect(kindOf('S-1', '', '12480', '0,31', '', 'Total rebuild')).toBe('data');
    expect(kindOf('Totalisator 3', '', '12480', '0,31')).toBe('data');
    expect(kindOf('Sum-3', '', '12480', '0,31')).toBe('data');
    expect(kindOf('Media 7', '', 'north', '0,31')).toBe('totals');
    expect(kindOf('Media Luna 7', '', 'north', '0,31')).toBe('data');
    expect(kindOf('', '', '', '', '', 'and the second line of the remark above')).toBe('data');
  });

  it('is data for every line with a unit and a date', () => {
    const dates = fc.constantFrom('2019-03-14', '14.03.2019', '3/14/19', '14 Mar 2019', '14.3.19 08:30');
    const units = fc.oneof(
      fc.constantFrom(...totals, ...footers, 'Unit', 'S-1'),
      fc.string({ minLength: 1 }),
    );
    fc.assert(
      fc.property(
        units,
        dates,
        fc.array(fc.string(), { maxLength: 4 }),
        fc.constantFrom('9120', '0,3'),
        (unit, date, rest, hours) => {
          const isFilled = unit.replace(/\p{Cc}/gu, '').trim() !== '';
          const kind = kindOf(unit, date, hours, ...rest);
          return !isFilled || kind === 'data';
        },
      ),
      { seed: 20211, numRuns: 3000 },
    );
  });
});
