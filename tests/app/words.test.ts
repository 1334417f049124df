import { describe, expect, test } from 'vitest';
import { unitAddress } from '../../app/address/unitAddress';
import { initialState } from '../../app/engine/engineState';
import { compareValues } from '../../app/table/compareValues';
import { sortFromText, sortToText } from '../../app/table/sortText';
import { counted } from '../../app/words/counted';
import { openedWords } from '../../app/words/openedWords';
import { recordsSentence } from '../../app/words/recordsSentence';
import { midSentence, seriesName } from '../../app/words/seriesName';
import { characteristics, fleet } from './fixture';

describe('seriesName', () => {
  test('the characteristic, then which of its numbers', () => {
    expect(seriesName('thrust_play', characteristics)).toBe('Thrust play');
    expect(seriesName('tip_compressor_smallest', characteristics)).toBe(
      'Tip clearance, compressor, smallest',
    );
    expect(seriesName('seal_gap', characteristics)).toBe('Seal gap');
  });

  test('inside a sentence only a plain capital is dropped', () => {
    expect(midSentence('Thrust play')).toBe('thrust play');
    expect(midSentence('LP gap')).toBe('LP gap');
  });
});

test('counted takes the right number', () => {
  expect(counted(1, 'unit')).toBe('1 unit');
  expect(counted(0, 'unit')).toBe('0 units');
  expect(counted(2, 'row or cell', 'rows or cells')).toBe('2 rows or cells');
});

const file = {
  file: 'readings.csv',
  table: 'readings',
  rowsIn: 10,
  rowsUsed: 8,
  rowsHeld: 2,
  readingsIn: 11,
  readingsUsed: 8,
  readingsHeld: 2,
  readingsNone: 1,
  message: null,
};

describe('what is open', () => {
  test('the demo fleet says that it is synthetic, own files are counted', () => {
    expect(openedWords({ ...initialState, fleet: fleet() })).toEqual({
      data: 'Demo fleet: synthetic',
      asOf: '2026-11-01',
    });
    expect(openedWords({ ...initialState, fleet: fleet({ source: 'own', files: [file] }) }).data).toBe(
      'Your files: 1 file',
    );
    expect(openedWords(initialState)).toEqual({ data: 'opening', asOf: '–' });
  });

  test('the Records page sums rows and readings', () => {
    const open = {
      ...initialState,
      fleet: fleet({ source: 'own', files: [file, { ...file, rowsIn: 5, rowsHeld: 0, rowsUsed: 5 }] }),
    };
    expect(recordsSentence(open)).toBe(
      'Your 2 files are open. 15 rows came in, 13 used and 2 held; of 22 cells for readings, 16 used, 2 no reading and 4 held.',
    );
    expect(recordsSentence({ ...initialState, work: null })).toBe('Nothing is open.');
  });
});

test('addresses carry names that need escaping', () => {
  expect(unitAddress('L 11/07&x', 'thrust_play')).toBe('/unit/?id=L+11%2F07%26x&series=thrust_play');
  expect(unitAddress('A')).toBe('/unit/?id=A');
});

test('sorting goes to an address and back', () => {
  for (const text of ['', 'early', '-level']) expect(sortToText(sortFromText(text))).toBe(text);
  expect(sortFromText('-level')).toEqual([{ id: 'level', desc: true }]);
});

test('values compare by size, and numbers inside texts too', () => {
  expect(['L-11', 'L-2', 'H-3'].sort(compareValues)).toEqual(['H-3', 'L-2', 'L-11']);
  expect([10, 9, -1].sort(compareValues)).toEqual([-1, 9, 10]);
});
