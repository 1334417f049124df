// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, expect, test, vi } from 'vitest';
import type { DataColumn } from '../../../app/table/DataColumn';
import { DataTable } from '../../../app/table/DataTable';
import { mounted } from '../mounted';

interface Item {
  readonly name: string;
}

const written = vi.fn(({ name }: Item) => name);
const columns: readonly DataColumn<Item>[] = [
  { id: 'name', header: 'Name', rowHeader: true, value: ({ name }) => name, cell: written },
];
const items = Array.from({ length: 5_000 }, (_, place): Item => ({ name: `U-${place}` }));

/** Observers that say nothing until they are told to. */
const observers: { readonly tell: ResizeObserverCallback; readonly seen: Element[] }[] = [];
class Observer {
  private readonly own: (typeof observers)[number];
  constructor(tell: ResizeObserverCallback) {
    this.own = { tell, seen: [] };
    observers.push(this.own);
  }
  observe(element: Element) {
    this.own.seen.push(element);
  }
  unobserve() {}
  disconnect() {}
}

const now = mounted();
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  observers.length = 0;
  written.mockClear();
});

const show = () =>
  act(() =>
    now.root.render(
      <DataTable caption="Items" columns={columns} rows={items} rowKey={({ name }) => name} empty="None." />,
    ),
  );
const rows = () => [...now.box.querySelectorAll('tbody tr[aria-rowindex]')];

/** Says sizes of what is observed, as a browser does once it has laid the page out. */
function layOut(tag: string, height_px: number) {
  act(() => {
    for (const { tell, seen } of observers) {
      const entries = seen
        .filter((target) => target.tagName === tag)
        .map((target) => ({
          target,
          contentRect: { width: 800, height: height_px },
          borderBoxSize: [{ inlineSize: 800, blockSize: height_px }],
        }));
      if (entries.length > 0) tell(entries as unknown as ResizeObserverEntry[], {} as ResizeObserver);
    }
  });
}

test('a long table is put up without having the page laid out: no size is asked for, nothing is scrolled', () => {
  vi.stubGlobal('ResizeObserver', Observer);
  const asked: string[] = [];
  for (const name of [
    'offsetHeight',
    'offsetWidth',
    'clientHeight',
    'clientWidth',
    'scrollHeight',
    'scrollTop',
  ] as const) {
    const owner = [HTMLElement.prototype, Element.prototype].find((one) => Object.hasOwn(one, name));
    vi.spyOn(owner as HTMLElement, name, 'get').mockImplementation(() => {
      asked.push(name);
      return 0;
    });
  }
  vi.spyOn(Element.prototype, 'getBoundingClientRect').mockImplementation(() => {
    asked.push('getBoundingClientRect');
    return new DOMRect();
  });
  vi.spyOn(Element.prototype, 'scrollTo').mockImplementation(() => void asked.push('scrollTo'));
  show();
  expect(asked).toEqual([]);
  // As many as the window may show, not all, and a reader is told how many there are.
  expect(rows().length).toBeGreaterThan(15);
  expect(rows().length).toBeLessThan(100);
  expect(now.box.querySelector('table')?.getAttribute('aria-rowcount')).toBe('5001');
  expect(rows()[0]?.getAttribute('aria-rowindex')).toBe('2');
});

test('follows the sizes that it is told: fewer rows in a low box, more height for tall rows', () => {
  vi.stubGlobal('ResizeObserver', Observer);
  show();
  const first = rows().length;
  layOut('SECTION', 90);
  const low = rows().length;
  expect(low).toBeLessThan(first);
  const after = () =>
    Number.parseFloat((now.box.querySelector('table > tbody:last-child > tr') as HTMLElement).style.height);
  expect(after()).toBe((5_000 - low) * 30);
  layOut('TR', 90);
  // Rows of 90 px in place of 30: one of them fills the box.
  expect(rows().length).toBeLessThan(low);
  expect(after()).toBe((5_000 - low) * 30 + (low - rows().length) * 90);
});

test('rows that are the same are not written anew', () => {
  show();
  const before = written.mock.calls.length;
  expect(before).toBeGreaterThan(15);
  show();
  expect(written.mock.calls.length).toBe(before);
});
