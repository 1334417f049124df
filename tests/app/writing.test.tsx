// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { DataColumn } from '../../app/table/DataColumn';
import { DataTable } from '../../app/table/DataTable';
import { useWriting, useWrittenMemo } from '../../app/writing/useWriting';
import { WritingControls } from '../../app/writing/WritingControls';
import { chooseWriting, writingFrom } from '../../app/writing/writingChoice';
import { formatMm } from '../../lib/charts/format';
import { plainWriting, setWriting, writingInForce } from '../../lib/charts/writingStyle';

interface Item {
  readonly day: string;
  readonly length_mm: number;
}

const columns: readonly DataColumn<Item>[] = [
  { id: 'day', header: 'Day', date: true, rowHeader: true, value: ({ day }) => day },
  {
    id: 'length',
    header: 'Length',
    value: ({ length_mm }) => length_mm,
    cell: ({ length_mm }) => formatMm(length_mm),
  },
];
const items: readonly Item[] = [{ day: '2026-03-01', length_mm: 0.3124 }];

function Shown() {
  useWriting();
  const sentence = useWrittenMemo(() => `The length is ${formatMm(0.5)}.`, []);
  return (
    <>
      <p id="sentence">{sentence}</p>
      <DataTable caption="Items" columns={columns} rows={items} rowKey={({ day }) => day} empty="None." />
      <WritingControls />
    </>
  );
}

let root: Root;
let box: HTMLElement;
const text = (selector: string) => box.querySelector(selector)?.textContent;

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  localStorage.clear();
  setWriting(plainWriting);
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
});

afterEach(() => {
  act(() => root.unmount());
  setWriting(plainWriting);
  box.remove();
});

test('a choice writes tables and sentences anew at once, and is there on the next visit', () => {
  act(() => root.render(<Shown />));
  expect([text('tbody th'), text('tbody td'), text('#sentence')]).toEqual([
    '2026-03-01',
    '0.312\u00a0mm',
    'The length is 0.500\u00a0mm.',
  ]);
  act(() => chooseWriting({ numbers: 'space-comma', dates: 'points' }));
  const chosen = ['01.03.2026', '0,312\u00a0mm', 'The length is 0,500\u00a0mm.'];
  expect([text('tbody th'), text('tbody td'), text('#sentence')]).toEqual(chosen);
  act(() => root.unmount());
  setWriting(plainWriting);
  root = createRoot(box);
  act(() => root.render(<Shown />));
  expect([text('tbody th'), text('tbody td'), text('#sentence')]).toEqual(chosen);
});

test('a choice of another tab is followed', () => {
  act(() => root.render(<Shown />));
  act(() => {
    window.dispatchEvent(
      new StorageEvent('storage', { key: 'endfloat writing', newValue: 'plain-point strokes' }),
    );
  });
  expect(writingInForce()).toEqual({ numbers: 'plain-point', dates: 'strokes' });
  expect(text('tbody th')).toBe('01/03/2026');
});

test('what is kept and names no style is the plain one', () => {
  expect(writingFrom(null)).toEqual(plainWriting);
  expect(writingFrom('toString constructor')).toEqual(plainWriting);
  expect(writingFrom('plain-comma nonsense')).toEqual({ numbers: 'plain-comma', dates: 'iso' });
});

test('every choice is shown by its own example', () => {
  act(() => root.render(<Shown />));
  const examples = [...box.querySelectorAll('option')].map(({ textContent }) => textContent);
  expect(examples).toEqual([
    '12\u202f345.6',
    '12,345.6',
    '12’345.6',
    '12345.6',
    '12\u202f345,6',
    '12.345,6',
    '12345,6',
    '2026-12-31',
    '31.12.2026',
    '31/12/2026',
    '31\u00a0Dec\u00a02026',
  ]);
});
