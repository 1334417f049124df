// @vitest-environment happy-dom
import fc from 'fast-check';
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { hiddenColumns, hideColumns } from '../../../app/table/columnMemory';
import type { DataColumn } from '../../../app/table/DataColumn';
import { DataTable } from '../../../app/table/DataTable';
import { accessFaults } from '../accessFaults';

const saved = vi.hoisted(() => vi.fn<(name: string, text: string) => void>());
vi.mock('../../../app/records/saveFile', () => ({ saveFile: saved }));

interface Item {
  readonly name: string;
  readonly hours: number;
  readonly site: string;
}
const columns: readonly DataColumn<Item>[] = [
  { id: 'name', header: 'Name', rowHeader: true, value: ({ name }) => name },
  { id: 'hours', header: 'Hours', numeric: true, value: ({ hours }) => hours },
  { id: 'site', header: 'Site', value: ({ site }) => site },
];
const items: readonly Item[] = [
  { name: 'U-1', hours: 300, site: 'North' },
  { name: 'U-2', hours: 200, site: 'South' },
];

let root: Root;
let box: HTMLElement;
beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('main');
  document.body.append(box);
  root = createRoot(box);
  saved.mockClear();
});
afterEach(() => {
  act(() => root.unmount());
  box.remove();
  act(() => hideColumns('name hours site', []));
  vi.unstubAllGlobals();
});

const show = (caption = 'Items', shown = columns) =>
  act(() =>
    root.render(
      <DataTable caption={caption} columns={shown} rows={items} rowKey={({ name }) => name} empty="None." />,
    ),
  );
const heads = () => [...box.querySelectorAll('thead button')].map((head) => head.textContent);
const cells = () =>
  [...box.querySelectorAll('tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent));
const button = (start: string) =>
  [...box.querySelectorAll('button')].find((one) => one.textContent?.startsWith(start)) as HTMLButtonElement;
const press = (start: string) => act(() => button(start).click());
const ticks = () => [...box.querySelectorAll<HTMLInputElement>('fieldset input')];
const tick = (place: number) => act(() => ticks()[place]?.click());

describe('columns of a table', () => {
  test('are hidden and shown by boxes behind a button; the first stays, and the file keeps all', async () => {
    show();
    expect(button('Columns').getAttribute('aria-expanded')).toBe('false');
    press('Columns');
    expect(button('Columns').getAttribute('aria-expanded')).toBe('true');
    expect(document.getElementById(button('Columns').getAttribute('aria-controls') ?? '')?.tagName).toBe(
      'FIELDSET',
    );
    expect(ticks().map((one) => [one.checked, one.disabled])).toEqual([
      [true, true],
      [true, false],
      [true, false],
    ]);
    tick(1);
    expect([heads(), cells()]).toEqual([
      ['Name', 'Site'],
      [
        ['U-1', 'North'],
        ['U-2', 'South'],
      ],
    ]);
    expect(button('Columns').textContent).toBe('Columns of Items (1 hidden)');
    expect(await accessFaults(box)).toEqual([]);
    press('Save CSV');
    expect(saved.mock.calls[0]?.[1]).toBe('Name,Hours,Site\nU-1,300,North\nU-2,200,South\n');
    press('All columns');
    expect(heads()).toEqual(['Name', 'Hours', 'Site']);
    expect(button('All columns').disabled).toBe(true);
  });

  test('stay as chosen when the table comes again, under another caption too, and sorting goes on', () => {
    show();
    act(() => (box.querySelectorAll('thead button')[1] as HTMLElement).click());
    press('Columns');
    tick(1);
    expect(cells().map(([name]) => name)).toEqual(['U-2', 'U-1']);
    act(() => root.unmount());
    root = createRoot(box);
    show('2 other items');
    expect(heads()).toEqual(['Name', 'Site']);
    expect(localStorage.getItem('endfloat columns name hours site')).toBe('["hours"]');
    press('Columns');
    press('All columns');
    expect(localStorage.getItem('endfloat columns name hours site')).toBeNull();
  });

  test('hold until the page is closed where the browser remembers nothing', () => {
    vi.stubGlobal('localStorage', {
      getItem: () => {
        throw new Error('refused');
      },
      setItem: () => {
        throw new Error('refused');
      },
      removeItem: () => {
        throw new Error('refused');
      },
    });
    show();
    press('Columns');
    tick(2);
    expect(heads()).toEqual(['Name', 'Hours']);
  });

  test('are not offered where there are two', () => {
    show('Items', columns.slice(0, 2));
    expect(button('Columns')).toBeUndefined();
  });

  test('are those that this browser kept: what is no list of names hides nothing', async () => {
    hideColumns('a b c', ['c']);
    localStorage.setItem('endfloat columns d e f', 'e,f');
    vi.resetModules();
    const again = await import('../../../app/table/columnMemory');
    expect([...again.hiddenColumns(again.hiddenText('a b c'))]).toEqual(['c']);
    expect([...again.hiddenColumns(again.hiddenText('d e f'))]).toEqual([]);
    for (const text of ['', '3', '{"hours":1}', '[1,null]', '["hours"'])
      expect(hiddenColumns(text).size).toBe(0);
  });

  test('whatever is hidden, the first and all others are shown, in their order, and the file is the same', () => {
    fc.assert(
      fc.property(fc.subarray(['site', 'gone', 'hours', 'name']), (hidden) => {
        act(() => hideColumns('name hours site', hidden));
        show();
        saved.mockClear();
        press('Save CSV');
        const expected = ['Name', ...(hidden.includes('hours') ? [] : ['Hours'])];
        expect(heads()).toEqual(hidden.includes('site') ? expected : [...expected, 'Site']);
        expect(cells().map((row) => row.length)).toEqual([heads().length, heads().length]);
        expect(saved.mock.calls[0]?.[1]).toMatch(/^Name,Hours,Site\n/);
      }),
    );
  });
});
