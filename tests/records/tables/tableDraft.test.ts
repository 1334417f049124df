import { describe, expect, test } from 'vitest';
import type { Decision } from '../../../lib/records/decisions/Decision';
import { type RowTexts, tableEdit, tablesPage } from '../../../lib/records/decisions/tableEdits';
import { draftDecisions } from '../../../lib/records/tables/draftDecisions';
import { blockOf, withBlock } from '../../../lib/records/tables/pastedBlock';
import type { TableRow } from '../../../lib/records/tables/TableRow';
import {
  type Draft,
  draftOf,
  faultsOf,
  withAddedRows,
  withCell,
  withRemoved,
} from '../../../lib/records/tables/tableDraft';

const wren = { frame: 'Wren', series: 'runout', limit_kind: 'upper', limit: '0.05' };
const owl = { ...wren, frame: 'Owl', limit: '0.06' };
const row = (texts: RowTexts, changes: Partial<TableRow> = {}): TableRow => ({
  file: 'limits.csv',
  line: 2,
  texts,
  isUsed: true,
  isDerived: false,
  reasons: [],
  ...changes,
});
const draft = draftOf([row(wren), row(owl, { line: 3 })]);
const decided = (edited: Draft, inForce: readonly Decision[] = []) =>
  draftDecisions('limits', edited, inForce).map(({ key, cells, was }) => [
    key.join(' '),
    cells?.limit ?? null,
    was?.limit ?? null,
  ]);
const keyOfWren = ['Wren', 'runout', 'upper', ''];

describe('what a draft decides', () => {
  test('nothing without a change, or with one that was put back', () => {
    expect(decided(draft)).toEqual([]);
    expect(decided(withCell(withCell(draft, 'row 0', 'limit', '1'), 'row 0', 'limit', ' 0.05'))).toEqual([]);
    expect(decided(withAddedRows(draft, 2))).toEqual([]);
  });

  test('a changed cell, a removed row and an added one, each with what the files have', () => {
    expect(decided(withCell(draft, 'row 0', 'limit', '0.07'))).toEqual([
      ['Wren runout upper ', '0.07', '0.05'],
    ]);
    expect(decided(withRemoved(draft, 'row 1', true))).toEqual([['Owl runout upper ', null, '0.06']]);
    const added = Object.entries({ ...wren, frame: 'Kite', limit: '0.08' }).reduce(
      (edited, [column, text]) => withCell(edited, 'added 0', column, text),
      withAddedRows(draft, 1),
    );
    expect(decided(added)).toEqual([['Kite runout upper ', '0.08', null]]);
  });

  test('a row under another name is removed under its old one', () => {
    expect(decided(withCell(draft, 'row 0', 'frame', 'Kite'))).toEqual([
      ['Wren runout upper ', null, '0.05'],
      ['Kite runout upper ', '0.05', null],
    ]);
  });

  test('of a row that stands twice one is removed: the other is left', () => {
    const twice = draftOf([row(wren), row({ ...wren, limit: '0.09' }, { line: 4, isUsed: false })]);
    expect(decided(withRemoved(twice, 'row 1', true))).toEqual([['Wren runout upper ', '0.05', '0.05']]);
    expect(decided(withRemoved(twice, 'row 0', true))).toEqual([['Wren runout upper ', '0.09', '0.05']]);
  });

  test('a row that was edited before keeps what the files have', () => {
    const before = tableEdit('limits', keyOfWren, { ...wren, limit: '0.07' }, wren);
    const edited = draftOf([row({ ...wren, limit: '0.07' }, { file: tablesPage, line: 1 })]);
    expect(decided(withCell(edited, 'row 0', 'limit', '0.08'), [before])).toEqual([
      ['Wren runout upper ', '0.08', '0.05'],
    ]);
  });

  test('a row that follows from an answer is neither changed nor removed', () => {
    const derived = draftOf([row(wren, { isDerived: true })]);
    expect(withCell(derived, 'row 0', 'limit', '1')).toEqual(derived);
    expect(withRemoved(derived, 'row 0', true)).toEqual(derived);
  });
});

describe('what is to be done about cells', () => {
  const faults = (edited: Draft) =>
    [...faultsOf('limits', edited)].map(([id, cells]) => [id, Object.fromEntries(cells)]);

  test('changed rows only are looked at', () => {
    expect(faults(draftOf([row({ frame: 'Wren' })]))).toEqual([]);
    expect(faults(withCell(draft, 'row 0', 'limit', '0,07'))).toEqual([
      ['row 0', { limit: 'Write 0.07 with a decimal point.' }],
    ]);
  });

  test('two rows of one name', () => {
    expect(faults(withCell(draft, 'row 1', 'frame', 'Wren'))).toEqual([
      [
        'row 1',
        { frame: 'Another row has the same frame, series, limit_kind, valid_from: change or remove one.' },
      ],
    ]);
    expect(faults(withRemoved(withCell(draft, 'row 1', 'frame', 'Wren'), 'row 0', true))).toEqual([]);
  });
});

describe('a block from a spreadsheet', () => {
  test('goes in from the cell on, adds rows, and lists what does not fit', () => {
    const block = blockOf(
      '0.07\t0.01\t0.03\r\n0.08\t\t\tTB\r\n"0.09"\t\t\t\t"a ""b""\nc"\t2024-01-01\tover\r\n',
    );
    const { draft: pasted, notFitting } = withBlock('limits', draft, { row: 0, column: 3 }, block);
    expect(
      pasted.map(({ id, texts }) => [id, texts.frame, texts.limit, texts.assembly_lower, texts.reset_by]),
    ).toEqual([
      ['row 0', 'Wren', '0.07', '0.01', undefined],
      ['row 1', 'Owl', '0.08', '', 'TB'],
      ['added 0', undefined, '0.09', '', ''],
    ]);
    expect(pasted[2]?.texts.source).toBe('a "b"\nc');
    expect(notFitting).toEqual([{ line: 3, text: 'over', why: 'right of the last column' }]);
  });

  test('leaves rows that cannot be edited', () => {
    const { draft: pasted, notFitting } = withBlock(
      'limits',
      withRemoved(draft, 'row 0', true),
      { row: 0, column: 3 },
      blockOf('1\n2'),
    );
    expect(pasted.map(({ texts }) => texts.limit)).toEqual(['0.05', '2']);
    expect(notFitting).toEqual([{ line: 1, text: '1', why: 'in a row that cannot be edited' }]);
  });
});
