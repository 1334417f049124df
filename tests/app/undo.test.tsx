// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { initialState } from '../../app/engine/engineState';
import { journalCsv } from '../../app/records/journal/journalCsv';
import { UndoButtons } from '../../app/records/journal/UndoButtons';
import { acknowledgement } from '../../lib/records/decisions/acknowledgements';
import type { Decision, JournalEntry } from '../../lib/records/decisions/Decision';
import { withDecisions, withTakenBack } from '../../lib/records/decisions/journal';
import { rulingId } from '../../lib/records/decisions/rulings';
import { undoable, withRedone, withUndone } from '../../lib/records/decisions/steps';
import { tableEdit } from '../../lib/records/decisions/tableEdits';

const engine = vi.hoisted(() => ({ current: {} as unknown }));
vi.mock('../../app/engine/EngineProvider', () => ({ useEngine: () => engine.current }));

const signature = { at: '2026-03-01T08:05:00.000Z', by: 'AB' };
const ruling = (line: number): Decision => {
  const place = { file: 'sheet.csv', line, column: 'play' };
  const text = { raw: 'O.2', ruling: 'edit', text: '0.2', reason: 'an O for a 0', by: 'AB' } as const;
  return { kind: 'ruling', id: rulingId(place), ...place, ...text };
};
const noted = acknowledgement({
  source: 'own',
  unit: 'W-1',
  series: 'runout',
  upTo: '2024-01-01',
  remark: 'seen',
});

let root: Root;
let box: HTMLElement;
let journal: readonly JournalEntry[];
const start = vi.fn<(way: string, step: number) => void>();
const undoNotes = vi.fn(async (step: number) => {
  journal = withUndone(journal, step, signature);
});

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
  start.mockClear();
  undoNotes.mockClear();
});
afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

async function show(entries: readonly JournalEntry[], onStart = () => {}) {
  journal = entries;
  engine.current = {
    state: { ...initialState, work: null },
    start,
    request: { journal: async () => journal, undoNotes },
  };
  await act(async () =>
    root.render(
      <>
        <input aria-label="text" />
        <input type="checkbox" />
        <UndoButtons source="own" onStart={onStart} />
      </>,
    ),
  );
}

const buttons = () =>
  [...box.querySelectorAll('button')].map((one) => [one.textContent, one.disabled ? 'off' : 'on']);
const press = (target: Element | null, keys: Partial<KeyboardEventInit>) =>
  act(async () =>
    target?.dispatchEvent(new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, bubbles: true, ...keys })),
  );

test('the buttons say what they undo and do again', async () => {
  const decided = withDecisions([], [ruling(2), ruling(3), ruling(4)], signature);
  await show(decided);
  expect(buttons()).toEqual([
    ['Undo: 3 rulings on sheet.csv', 'on'],
    ['Redo', 'off'],
  ]);
  await act(async () => box.querySelector('button')?.click());
  expect(start.mock.calls).toEqual([['undo', 1]]);
  act(() => root.unmount());
  root = createRoot(box);
  await show(withUndone(withTakenBack(decided, [ruling(3).id], signature), 4, signature));
  expect(buttons()).toEqual([
    ['Undo: 3 rulings on sheet.csv', 'on'],
    ['Redo: taking back of 1 ruling on sheet.csv', 'on'],
  ]);
});

test('the keys undo and do again, but not in a text field', async () => {
  const undone = withUndone(
    withDecisions(withDecisions([], [ruling(2)], signature), [ruling(3)], signature),
    2,
    signature,
  );
  await show(undone);
  await press(box.querySelector('input[aria-label]'), {});
  expect(start.mock.calls).toEqual([]);
  await press(box.querySelector('input[type=checkbox]'), {});
  await press(document.body, { key: 'Z', shiftKey: true });
  await press(document.body, { ctrlKey: false });
  expect(start.mock.calls).toEqual([
    ['undo', 1],
    ['redo', 2],
  ]);
});

test('remarks are undone without files being read, and the buttons follow', async () => {
  await show(withDecisions([], [noted], signature));
  expect(buttons()[0]).toEqual(['Undo: 1 acknowledgement of W-1, runout', 'on']);
  await act(async () => box.querySelector('button')?.click());
  expect([start.mock.calls, undoNotes.mock.calls]).toEqual([[], [[1]]]);
  expect(buttons()).toEqual([
    ['Undo', 'off'],
    ['Redo: 1 acknowledgement of W-1, runout', 'on'],
  ]);
});

test('the journal as CSV: what was done, before and after, of an edited row the cells that changed', () => {
  const key = ['Wren', 'runout', 'upper', ''];
  const row = { frame: 'Wren', series: 'runout', limit_kind: 'upper', limit: '0.05', source: '=table 1' };
  const edited = withDecisions(
    [],
    [
      tableEdit('limits', key, { ...row, limit: '0.06' }, row),
      tableEdit('limits', ['Owl', 'runout', 'upper', ''], null, { ...row, frame: 'Owl' }),
    ],
    signature,
  );
  const undone = withUndone(edited, undoable(edited, 'own')?.number ?? 0, signature);
  const csv = journalCsv(withRedone(undone, 1, signature));
  const at = signature.at;
  expect(csv.replace('\uFEFF', '').trim().split('\n')).toEqual([
    'number,at,by,act,kind,about,before,after',
    `1,${at},AB,decided,table,row ‘Wren / runout / upper’ of limits,limit 0.05,limit 0.06`,
    `2,${at},AB,decided,table,row ‘Owl / runout / upper’ of limits,"limit 0.05, source =table 1",no such row`,
    `3,${at},AB,undone (what was done with number 1),table,row ‘Owl / runout / upper’ of limits,no such row,"limit 0.05, source =table 1"`,
    `4,${at},AB,undone (what was done with number 1),table,row ‘Wren / runout / upper’ of limits,limit 0.06,limit 0.05`,
    `5,${at},AB,done again (what was done with number 1),table,row ‘Wren / runout / upper’ of limits,limit 0.05,limit 0.06`,
    `6,${at},AB,done again (what was done with number 1),table,row ‘Owl / runout / upper’ of limits,"limit 0.05, source =table 1",no such row`,
  ]);
});
