import { describe, expect, test } from 'vitest';
import { cellFault } from '../../../lib/records/tables/cellFault';

describe('what to do about a cell', () => {
  test.each([
    ['limits', 'limit', '0.32', null],
    ['limits', 'limit', ' 1e-1 ', null],
    ['limits', 'limit', '0,32', 'Write 0.32 with a decimal point.'],
    ['limits', 'limit', 'O.32', 'Write a number in digits, with a decimal point.'],
    ['limits', 'limit', '1001', 'Write a number from -100 to 1000 mm.'],
    ['limits', 'limit', '', 'Give value that the series must not pass.'],
    ['limits', 'limit_kind', 'Upper', null],
    ['limits', 'limit_kind', 'above', 'Write one of: upper, lower.'],
    ['limits', 'valid_from', '', null],
    ['limits', 'valid_from', '2024-02-29', null],
    ['limits', 'valid_from', '2023-02-29', 'Write a day as YYYY-MM-DD, from 1950 to 2100.'],
    ['limits', 'valid_from', '29.02.2024', 'Write a day as YYYY-MM-DD, from 1950 to 2100.'],
    ['limits', 'valid_from', '1949-12-31', 'Write a day as YYYY-MM-DD, from 1950 to 2100.'],
    ['plan', 'hours_per_year', '8785', 'Write a number from 0 to 8784 h.'],
    ['parts', 'per_unit', '-1', 'Write a number from 0 to 10000.'],
  ] as const)('%s, %s: ‘%s’', (table, column, text, fault) => {
    expect(cellFault(table, column, text)).toBe(fault);
  });

  test('a column that the table has not', () => {
    expect(() => cellFault('limits', 'engine', '')).toThrow(
      "cellFault requires a column of limits, got 'engine'",
    );
  });
});
