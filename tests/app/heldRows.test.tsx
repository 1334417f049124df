// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Engine } from '../../app/engine/EngineProvider';
import { initialState } from '../../app/engine/engineState';
import { filtered } from '../../app/records/ProblemFilters';
import { RecordsPage } from '../../app/records/RecordsPage';
import type { Problem } from '../../lib/analysis/types';
import type { Decision, JournalEntry, RulingDecision } from '../../lib/records/decisions/Decision';
import { rulingId } from '../../lib/records/decisions/rulings';
import { fleet } from './fixture';

const engine = vi.hoisted(() => ({ current: {} as unknown }));
vi.mock('../../app/engine/EngineProvider', () => ({ useEngine: () => engine.current }));
vi.mock('../../app/address/useQuery', () => ({ useQuery: () => [new URLSearchParams(), () => {}] }));

const problem = (changes: Partial<Problem>): Problem => ({
  file: 'readings.csv',
  row: 2,
  column: 'value',
  raw: 'O.31',
  reason: 'not a number',
  action: 'held',
  ...changes,
});
const problems = [
  problem({}),
  problem({ row: 3, raw: '0.3l' }),
  problem({
    file: 'overhauls.csv',
    row: 4,
    column: 'unit_hours',
    raw: '1400',
    reason: 'the hours do not rise',
    releasable: true,
  }),
  problem({ row: 9, reason: 'read as an interval', action: 'interpreted' }),
];
const own = fleet({ source: 'own', problems, problemsFound: 4 });

let root: Root;
let box: HTMLElement;
let decide: ReturnType<typeof vi.fn<(decisions: readonly Decision[]) => void>>;
let takeBack: ReturnType<typeof vi.fn<(ids: readonly string[]) => void>>;
let signAs: ReturnType<typeof vi.fn<(initials: string) => Promise<void>>>;

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
  decide = vi.fn<(decisions: readonly Decision[]) => void>();
  takeBack = vi.fn<(ids: readonly string[]) => void>();
  signAs = vi.fn(async (_: string) => {});
});
afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

async function show(state: Partial<Engine['state']>, entries: readonly JournalEntry[] = []) {
  engine.current = {
    state: { ...initialState, work: null, ...state },
    start: (name: 'decide' | 'takeBack', about: never) => ({ decide, takeBack })[name](about),
    request: {
      signAs,
      initials: async () => 'AB',
      fileLine: async (file: string, line: number) => `${file} line ${line}`,
      journal: async () => entries,
      ownFileNames: async () => ['readings.csv'],
    },
  };
  await act(async () => root.render(<RecordsPage />));
}

const button = (start: string) =>
  [...box.querySelectorAll('button')].find((one) => one.textContent?.startsWith(start));
const press = (start: string) => act(async () => button(start)?.click());
const labelled = (start: string) =>
  [...box.querySelectorAll('label')]
    .find((one) => one.textContent?.startsWith(start))
    ?.querySelector('input');

async function type(label: string, text: string) {
  const input = labelled(label);
  if (input === undefined || input === null) throw new Error(`no field ${label}`);
  await act(async () => {
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(input, text);
    input.dispatchEvent(new Event('input', { bubbles: true }));
  });
}

describe('held rows on the Records page', () => {
  test('a row opens with its raw text and line, and an edit is applied with reason and initials', async () => {
    await show({ fleet: own });
    expect(button('Apply 0 rulings')?.disabled).toBe(true);
    await press('Rule on line 2');
    expect(document.activeElement).toBe(labelled('Text to be read'));
    expect(labelled('Text to be read')?.value).toBe('O.31');
    expect(box.querySelector('form[aria-label="Ruling"]')?.textContent).toContain('readings.csv line 2');
    expect(button('Use as it stands')?.disabled).toBe(true);
    await press('Use this text');
    expect(box.querySelector('form [role=alert]')?.textContent).toContain('The text is the one that stands');
    await type('Text to be read', '0.31');
    await press('Use this text');
    expect(box.querySelector('form [role=alert]')?.textContent).toContain('Give the reason');
    await type('Reason', ' an O for a 0 ');
    await press('Use this text');
    expect(box.querySelector('form[aria-label="Ruling"]')).toBeNull();
    expect(box.textContent).toContain('to be read as ‘0.31’');
    expect(document.activeElement).toBe(button('Rule on line 2'));
    expect(decide).not.toHaveBeenCalled();
    await press('Apply 1 ruling');
    const place = { file: 'readings.csv', line: 2, column: 'value' };
    expect(decide.mock.calls).toEqual([
      [
        [
          {
            kind: 'ruling',
            id: rulingId(place),
            ...place,
            raw: 'O.31',
            ruling: 'edit',
            text: '0.31',
            reason: 'an O for a 0',
            by: 'AB',
          },
        ],
      ],
    ]);
    expect(document.activeElement).toBe(box.querySelector('.answer'));
  });

  test('what is only in doubt may be used as it stands, and be put back', async () => {
    await show({ fleet: own });
    await press('Rule on line 4');
    expect(button('Use as it stands')?.disabled).toBe(false);
    await type('Reason', 'new rotor');
    await press('Use as it stands');
    expect(button('Apply 1 ruling')?.disabled).toBe(false);
    await press('Put back');
    expect(button('Apply 0 rulings')?.disabled).toBe(true);
  });

  test('one ruling on all selected rows; interpreted rows cannot be selected', async () => {
    await show({ fleet: own });
    expect(box.querySelectorAll('input[type=checkbox]')).toHaveLength(3);
    await press('Select all 3 held rows and cells');
    expect(button('Use as it stands')?.disabled).toBe(true);
    expect(box.textContent).toContain('2 of them are held by more than a doubt');
    await type('Reason', 'cannot be made out');
    await press('Leave out');
    expect(document.activeElement).toBe(button('Apply 3 rulings'));
    await type('Your initials', 'CD');
    expect(signAs.mock.calls.at(-1)).toEqual(['CD']);
    await press('Apply 3 rulings');
    const [given] = decide.mock.calls[0] ?? [];
    expect(given?.map((one) => (one as RulingDecision).ruling)).toEqual([
      'leave out',
      'leave out',
      'leave out',
    ]);
    expect(given?.map((one) => (one as RulingDecision).by)).toEqual(['CD', 'CD', 'CD']);
  });

  test('the demo fleet offers no ruling', async () => {
    await show({ fleet: fleet({ problems, problemsFound: 4 }) });
    expect(button('Rule on')).toBeUndefined();
    expect(button('Apply')).toBeUndefined();
    expect(button('Save all held rows as CSV')).toBeDefined();
  });

  test('rulings in force are taken back, and the journal tells everything, the newest first', async () => {
    const place = { file: 'readings.csv', line: 2, column: '' };
    const decision: RulingDecision = {
      kind: 'ruling',
      id: rulingId(place),
      ...place,
      raw: 'a | b',
      ruling: 'leave out',
      text: null,
      reason: 'no overhaul',
      by: '',
    };
    const edit: RulingDecision = { ...decision, ruling: 'edit', text: 'a;b', reason: 'card' };
    const at = '2026-03-01T08:05:00.000Z';
    await show({ fleet: own }, [
      { number: 1, at, by: 'AB', act: 'decided', decision, before: null },
      { number: 2, at, by: '', act: 'decided', decision: edit, before: decision },
    ]);
    const section = box.querySelector('section[aria-labelledby=journal]');
    const cells = [...(section?.querySelectorAll('tbody tr') ?? [])].map((row) =>
      [...row.children].map((cell) => cell.textContent),
    );
    expect(cells).toEqual([
      [
        '2',
        '2026-03-01 08:05 UTC',
        '–none: no initials were given',
        'decided',
        'line 2 of readings.csv, the whole line: ‘a | b’',
        'left out: no overhaul',
        'read as ‘a;b’: card',
      ],
      [
        '1',
        '2026-03-01 08:05 UTC',
        'AB',
        'decided',
        'line 2 of readings.csv, the whole line: ‘a | b’',
        'nothing decided',
        'left out: no overhaul',
      ],
    ]);
    await press('Take back the ruling on line 2');
    expect(takeBack.mock.calls).toEqual([[[edit.id]]]);
    expect(box.textContent).not.toMatch(/\b(undefined|null|NaN|Infinity|object Object)\b/);
  });

  test('filters by file, column, what was done, and a text in the reason', () => {
    const all = { file: '', action: '', column: '', reason: '' };
    const rows = (changes: Partial<typeof all>) =>
      filtered(problems, { ...all, ...changes }).map(({ row }) => row);
    expect(rows({})).toEqual([2, 3, 4, 9]);
    expect(rows({ file: 'overhauls.csv' })).toEqual([4]);
    expect(rows({ action: 'interpreted' })).toEqual([9]);
    expect(rows({ column: 'unit_hours' })).toEqual([4]);
    expect(rows({ reason: ' NOT a ' })).toEqual([2, 3]);
    expect(filtered([problem({ column: '' })], { ...all, column: '(the whole line)' })).toHaveLength(1);
  });

  test('five thousand held rows are listed without drawing them all', async () => {
    const many = Array.from({ length: 5000 }, (_, index) => problem({ row: index + 2 }));
    await show({ fleet: fleet({ source: 'own', problems: many, problemsFound: 9000 }) });
    expect(box.querySelectorAll('input[type=checkbox]').length).toBeLessThan(200);
    await press('Select all 5');
    expect(box.textContent).toContain('5\u202f000 selected');
  });
});
