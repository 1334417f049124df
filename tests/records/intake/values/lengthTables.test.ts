import { describe, expect, it } from 'vitest';
import { isFormula } from '../../../../lib/records/intake/values/formulaText';
import { noneWord } from '../../../../lib/records/intake/values/noneWord';
import { readLength } from '../../../../lib/records/intake/values/readLength';
import { type Expected, lengthsWithComma, lengthsWithPoint, noneWords, outcome } from './lengthTable';

function expectOutcome(actual: ReturnType<typeof outcome>, expected: Expected) {
  if (typeof expected === 'object' && 'held' in expected)
    expect(actual).toEqual({ held: expect.stringContaining(expected.held) });
  else expect(actual).toEqual(expected);
}

describe('readLength', () => {
  it.each(lengthsWithPoint)('reads %j with a decimal point', (text, expected) => {
    expectOutcome(outcome(readLength(text, 'point')), expected);
  });

  it.each(lengthsWithComma)('reads %j with a decimal comma', (text, expected) => {
    expectOutcome(outcome(readLength(text, 'comma')), expected);
  });

  it.each([
    ['0.31', null],
    ['\u22120.31', null],
    ['0.52*', "'*' taken off: a mark that may refer to a remark"],
    ['0.52 ?', "'?' taken off: marked doubtful"],
    ['~0.52', "'~' taken off: marked approximate"],
    ['1,234', 'thousands comma taken out'],
    ['1\u202F234', 'thousands space taken out'],
    ['1\u2019234*', "'*' taken off: a mark that may refer to a remark; thousands apostrophe taken out"],
    ['(0.02)', 'brackets read as minus'],
    ['2E-02', 'written with an exponent'],
    ['<0.02', "'below' read as from 0 up to the number"],
    ['0.45-0.50', 'read as an interval'],
  ])('notes what was taken off %j', (text, note) => {
    expect(readLength(text, 'point')).toMatchObject({ note });
  });
});

describe('noneWord', () => {
  it.each(noneWords)('takes %j as nothing measured, and gives the word back', (word) => {
    expect(noneWord(` ${word} `)).toBe(word.normalize('NFC'));
    expect(readLength(word, 'point')).toEqual({ kind: 'none', word: word.normalize('NFC') });
    expect(readLength(word, 'comma').kind).toBe('none');
  });

  it.each(['', '0', '0.31', 'worn', 'n', '-0.02', 'OK 0.31', '1'])('takes %j as something', (text) => {
    expect(noneWord(text)).toBeNull();
  });
});

describe('isFormula', () => {
  it.each(['=1+1', ' =A1', '+A1', '+1+1', '+1*A2', '@sum', '+(1)', '=-0.02'])(
    'takes %j as a formula',
    (text) => {
      expect(isFormula(text)).toBe(true);
    },
  );

  it.each(['+0.02', '+1,234.5', '+0,02 mm', '-0.02', '0.02', 'a=b', ''])('takes %j as none', (text) => {
    expect(isFormula(text)).toBe(false);
  });
});
