// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { DataColumn } from '../../app/table/DataColumn';
import { DataTable } from '../../app/table/DataTable';

interface Item {
  readonly name: string;
  readonly hours: number | null;
}

const columns: readonly DataColumn<Item>[] = [
  { id: 'name', header: 'Name', rowHeader: true, value: (item) => item.name },
  { id: 'hours', header: 'Hours', numeric: true, value: (item) => item.hours },
];

const items: readonly Item[] = [
  { name: 'U-10', hours: 300 },
  { name: 'U-9', hours: null },
  { name: 'U-2', hours: 12_000 },
];

let root: Root;
let box: HTMLElement;

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
});

afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

function show(
  rows: readonly Item[] = items,
  sorting: { sort?: string; onSort?: (sort: string) => void } = {},
) {
  act(() =>
    root.render(
      <DataTable
        caption="Items"
        columns={columns}
        rows={rows}
        rowKey={(item) => item.name}
        empty="No item."
        {...sorting}
      />,
    ),
  );
}

const names = () => [...box.querySelectorAll('tbody th')].map((cell) => cell.textContent);
const press = (head: number) =>
  act(() =>
    box.querySelectorAll('thead button')[head]?.dispatchEvent(new MouseEvent('click', { bubbles: true })),
  );
const sortOf = (head: number) => box.querySelectorAll('thead th')[head]?.getAttribute('aria-sort');

describe('DataTable', () => {
  test('has a caption that names its scroll box, and scoped heads', () => {
    show();
    const caption = box.querySelector('caption');
    expect(caption?.textContent).toBe('Items');
    expect(box.querySelector('section')?.getAttribute('aria-labelledby')).toBe(caption?.id);
    expect(box.querySelector('section')?.tabIndex).toBe(0);
    expect([...box.querySelectorAll('thead th')].map((head) => head.getAttribute('scope'))).toEqual([
      'col',
      'col',
    ]);
    expect(box.querySelectorAll('tbody th[scope=row]')).toHaveLength(3);
  });

  test('sorts up, down and back to the order as given; what is missing stays last', () => {
    show();
    expect(names()).toEqual(['U-10', 'U-9', 'U-2']);
    press(1);
    expect([names(), sortOf(1)]).toEqual([['U-10', 'U-2', 'U-9'], 'ascending']);
    press(1);
    expect([names(), sortOf(1)]).toEqual([['U-2', 'U-10', 'U-9'], 'descending']);
    press(1);
    expect([names(), sortOf(1)]).toEqual([['U-10', 'U-9', 'U-2'], null]);
    press(0);
    expect(names()).toEqual(['U-2', 'U-9', 'U-10']);
  });

  test('takes its sorting from the caller, and passes on what is asked', () => {
    const asked: string[] = [];
    show(items, { sort: '-hours', onSort: (sort) => asked.push(sort) });
    expect(names()).toEqual(['U-2', 'U-10', 'U-9']);
    press(0);
    expect(asked).toEqual(['name']);
    show(items, { sort: 'no such column', onSort: () => {} });
    expect(names()).toEqual(['U-10', 'U-9', 'U-2']);
  });

  test('a missing value is a dash with a reason for those who hear the page', () => {
    show();
    const cell = box.querySelectorAll('tbody tr')[1]?.querySelector('td');
    expect(cell?.querySelector('[aria-hidden]')?.textContent).toBe('–');
    expect(cell?.querySelector('.visuallyHidden')?.textContent).toBe('none: not given in the data');
  });

  test('says so where there is no row', () => {
    show([]);
    expect(box.textContent).toBe('No item.');
  });
});
