// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { initialState } from '../../../app/engine/engineState';
import { TablesPage } from '../../../app/tables/TablesPage';
import type { Effect } from '../../../lib/analysis/engine/EngineApi';
import type { Decision, TableDecision } from '../../../lib/records/decisions/Decision';
import { withDecisions } from '../../../lib/records/decisions/journal';
import { tableEdit, tablesPage } from '../../../lib/records/decisions/tableEdits';
import type { TableRow } from '../../../lib/records/tables/TableRow';
import { fleet } from '../fixture';

const engine = vi.hoisted(() => ({ current: {} as unknown }));
vi.mock('../../../app/engine/EngineProvider', () => ({ useEngine: () => engine.current }));
vi.mock('../../../app/address/useQuery', () => ({ useQuery: () => [new URLSearchParams(), () => {}] }));
const saved = vi.hoisted(() => vi.fn<(name: string, text: string) => void>());
vi.mock('../../../app/records/saveFile', () => ({ saveFile: saved }));

const wren = { frame: 'Wren', series: 'runout', limit_kind: 'upper', limit: '0.05', source: 'table 1' };
const key = ['Owl', 'runout', 'upper', ''];
const edited = tableEdit('limits', key, { ...wren, frame: 'Owl', limit: 'O.07' }, { ...wren, frame: 'Owl' });
const journal = withDecisions([], [edited], { at: '2026-03-01T08:00:00.000Z', by: 'AB' });
const rows: readonly TableRow[] = [
  { file: 'limits.csv', line: 2, texts: wren, isUsed: true, isDerived: false, reasons: [] },
  {
    file: tablesPage,
    line: 1,
    texts: { ...wren, frame: 'Owl', limit: 'O.07' },
    isUsed: false,
    isDerived: false,
    reasons: ['not a number'],
  },
];
const effect: Effect = { changed: [], units: 8, held: [] };

let root: Root;
let box: HTMLElement;
const start = vi.fn<(name: string, about: readonly Decision[]) => void>();
const request = {
  journal: async () => journal,
  initials: async () => 'AB',
  ask: async () => rows,
  effect: vi.fn(async (_: readonly Decision[]) => effect),
  stopEffect: vi.fn(async () => {}),
};

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
  vi.clearAllMocks();
});
afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

const own = fleet({ source: 'own' });
async function show(open = own) {
  engine.current = { state: { ...initialState, work: null, fleet: open }, start, request };
  await act(async () => root.render(<TablesPage />));
}
const button = (name: string) =>
  [...box.querySelectorAll('button')].find((one) => one.textContent?.startsWith(name));
const press = (name: string) => act(async () => button(name)?.click());
const cell = (row: number, column: number) =>
  box.querySelector<HTMLElement>(`[data-place="${row} ${column}"]`);
const focus = (row: number, column: number) => act(async () => cell(row, column)?.focus());
const keys = async (...pressed: readonly (string | KeyboardEventInit)[]) => {
  for (const one of pressed)
    await act(async () =>
      document.activeElement?.dispatchEvent(
        new KeyboardEvent('keydown', {
          bubbles: true,
          cancelable: true,
          ...(typeof one === 'string' ? { key: one } : one),
        }),
      ),
    );
};
const type = (text: string) =>
  act(async () => {
    const input = document.activeElement;
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(input, text);
    input?.dispatchEvent(new Event('input', { bubbles: true }));
  });
const paste = (text: string) =>
  act(async () => {
    const event = new Event('paste', { bubbles: true, cancelable: true });
    Object.assign(event, { clipboardData: { getData: () => text } });
    document.activeElement?.dispatchEvent(event);
  });
const place = () => document.activeElement?.getAttribute('data-place');
const applied = () => (start.mock.calls[0]?.[1] ?? []) as readonly TableDecision[];

describe('own tables', () => {
  test('say what is in force, where each row comes from, and why one is held', async () => {
    await show();
    expect(box.querySelector('.answer')?.textContent).toBe(
      '1 limit is in force; 1 more is held, and not used.',
    );
    const sources = [...box.querySelectorAll('tbody tr')].map(
      (row) => row.lastElementChild?.previousElementSibling?.textContent,
    );
    expect(sources).toEqual(['limits.csv, line 2', 'edited here, AB, 2026-03-01; held: not a number']);
    expect(box.textContent).not.toMatch(/\b(undefined|null|NaN|Infinity|object Object)\b/);
  });

  test('one cell takes the keyboard’s focus; arrows move it, Enter and F2 edit, Escape leaves, typing starts anew', async () => {
    await show();
    expect(box.querySelectorAll('[data-place][tabindex="0"]')).toHaveLength(1);
    await focus(0, 0);
    await keys('ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowDown', 'ArrowDown');
    expect(place()).toBe('1 3');
    await keys('Home');
    expect(place()).toBe('1 0');
    await keys('End', 'ArrowRight');
    expect(place()).toBe('1 9');
    await focus(0, 3);
    await keys('F2');
    expect((document.activeElement as HTMLInputElement).value).toBe('0.05');
    await type('0.3');
    await keys('Escape');
    expect([place(), cell(0, 3)?.textContent]).toEqual(['0 3', '0.05']);
    await press('Apply');
    expect(start).not.toHaveBeenCalled();
    await keys('7');
    expect((document.activeElement as HTMLInputElement).value).toBe('7');
    await keys({ key: 'Tab' });
    expect([place(), cell(0, 3)?.textContent]).toEqual(['0 4', '7']);
  });

  test('an edit is checked as it is typed, its effect is shown, and it is applied with what the files had', async () => {
    await show();
    await focus(1, 3);
    await act(async () => cell(1, 3)?.click());
    await type('0,08');
    await keys('Enter');
    const fault = document.getElementById(cell(1, 3)?.getAttribute('aria-describedby') ?? '');
    expect(fault?.textContent).toBe('Write 0.08 with a decimal point.');
    expect(button('Apply 1 edited row')?.disabled).toBe(true);
    expect(box.textContent).toContain('1 cell asks for something first: see under it.');
    await focus(1, 3);
    await keys('F2');
    await type('0.08');
    await keys('Enter');
    await press('Show the effect');
    expect(box.textContent).toContain('No verdict would change, of 8 units.');
    await press('Apply 1 edited row');
    expect(applied().map((one) => [one.key, one.cells?.limit, one.was?.limit])).toEqual([
      [key, '0.08', '0.05'],
    ]);
    expect(request.effect.mock.calls[0]?.[0]).toEqual(applied());
    expect(document.activeElement).toBe(box.querySelector('.answer'));
  });

  test('a block is pasted from the focused cell on, and what does not fit is listed', async () => {
    await show();
    await focus(0, 7);
    await paste('table 2\t2024-01-01\tover\ntable 3');
    expect(box.textContent).toContain(
      '3 cells pasted. 1 text did not fit: line 1, ‘over’ (right of the last column).',
    );
    expect([cell(0, 7), cell(0, 8), cell(1, 7)].map((one) => one?.textContent)).toEqual([
      'table 2',
      '2024-01-01',
      'table 3',
    ]);
  });

  test('a row is added and one removed; Ctrl+Z takes edits back one by one before anything that is applied', async () => {
    await show();
    await press('Add a row');
    await focus(2, 0);
    await keys('K');
    await keys('Enter');
    expect(box.querySelectorAll('tbody tr')[2]?.lastElementChild?.previousElementSibling?.textContent).toBe(
      'added, not applied yet',
    );
    expect(box.textContent).toContain('3 cells ask for something first');
    await press('Remove Wren / runout / upper');
    expect(button('Keep Wren / runout / upper')).toBeDefined();
    expect(button('Undo')?.textContent).toBe('Undo: edit not applied yet');
    await focus(0, 0);
    for (let time = 0; time < 3; time++) await keys({ key: 'z', ctrlKey: true });
    expect(box.querySelectorAll('tbody tr')).toHaveLength(2);
    expect(button('Undo')?.textContent).toBe('Undo: 1 edited row of limits');
    await keys({ key: 'Z', ctrlKey: true, shiftKey: true });
    expect(box.querySelectorAll('tbody tr')).toHaveLength(3);
    expect(start).not.toHaveBeenCalled();
    await press('Drop the edits');
    expect(box.querySelectorAll('tbody tr')).toHaveLength(2);
    await keys({ key: 'z', ctrlKey: true });
    expect(start.mock.calls).toEqual([['undo', 1]]);
  });

  test('a comparison under way can be stopped, and a failure is told', async () => {
    let fail: (error: Error) => void = () => {};
    request.effect.mockImplementationOnce(
      () =>
        new Promise((_, reject) => {
          fail = reject;
        }),
    );
    await show();
    await press('Remove Owl / runout / upper');
    await press('Show the effect');
    await press('Stop');
    expect(request.stopEffect).toHaveBeenCalled();
    await act(async () => fail(new Error('The comparison was stopped. Nothing was changed.')));
    expect(box.querySelector('[aria-live] [role=alert]')?.textContent).toBe(
      'The comparison was stopped. Nothing was changed.',
    );
  });
});

test('the demo fleet’s tables are read only, and saved as canonical CSV', async () => {
  await show(fleet());
  expect(box.querySelector('.answer')?.textContent).toContain('1 limit of the demo fleet is in force');
  expect(box.querySelector('a[href^="/records"]')?.textContent).toBe('Records');
  expect(button('Apply')).toBeUndefined();
  await press('Save limits.csv');
  expect(saved.mock.calls[0]?.slice(0, 2)).toEqual([
    'limits.csv',
    'frame,series,limit_kind,limit,assembly_lower,assembly_upper,reset_by,source,valid_from\nWren,runout,upper,0.05,,,,table 1,\nOwl,runout,upper,O.07,,,,table 1,\n',
  ]);
});
