// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Engine } from '../../app/engine/EngineProvider';
import { initialState } from '../../app/engine/engineState';
import { RecordsPage } from '../../app/records/RecordsPage';
import { WaitingQuestions } from '../../app/records/WaitingQuestions';
import { builtInCharacteristics } from '../../lib/records/characteristics';
import type { Decision } from '../../lib/records/decisions/Decision';
import { fleet, question } from './fixture';

const engine = vi.hoisted(() => ({ current: {} as unknown }));
vi.mock('../../app/engine/EngineProvider', () => ({ useEngine: () => engine.current }));
vi.mock('../../app/address/useQuery', () => ({ useQuery: () => [new URLSearchParams(), () => {}] }));

const given = {
  kind: 'answer',
  id: 'q9',
  file: 'old.csv',
  column: 'play',
  question: 'Found or left?',
  answer: 'as found',
} as const;
const sheet = {
  file: 'sheet.csv',
  shape: '1 columns, 00',
  names: ['Axial play'],
  samples: [['0,31', '0,29']],
  characteristics: builtInCharacteristics,
  faults: [],
  reason: null,
  columns: [
    {
      index: 0,
      name: 'Axial play',
      role: 'reading',
      characteristic: 'thrust_play',
      stage: 'found',
      clock: null,
      viewingEndOpen: false,
      uomUnknown: false,
      uom: null,
      evidence: 'the header says axial play',
      sureness: 0.7,
    },
  ],
} as const;
const own = fleet({ source: 'own', questions: [question()], sheets: [sheet] });
const attempt = { files: [], problems: [], problemsFound: 0, questions: [question()], sheets: [sheet] };

let root: Root;
let box: HTMLElement;
let decide: ReturnType<typeof vi.fn<(decisions: readonly Decision[]) => void>>;
let takeBack: ReturnType<typeof vi.fn<(ids: readonly string[]) => void>>;

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
  decide = vi.fn<(decisions: readonly Decision[]) => void>();
  takeBack = vi.fn<(ids: readonly string[]) => void>();
});

afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

async function show(state: Partial<Engine['state']>): Promise<void> {
  engine.current = {
    state: { ...initialState, work: null, ...state },
    start: (name: 'decide' | 'takeBack', about: never) => ({ decide, takeBack })[name](about),
    request: {
      journal: async () => [
        { number: 1, at: '2026-03-01T08:00:00.000Z', by: '', act: 'decided', decision: given, before: null },
      ],
      ownFileNames: async () => ['sheet.csv'],
    },
  };
  await act(async () => root.render(<RecordsPage />));
}

const headings = () =>
  [...box.querySelectorAll('h2')].map((one) => one.textContent).filter((text) => !text?.endsWith('?'));
const press = (start: string) =>
  act(() => [...box.querySelectorAll('button')].find((one) => one.textContent?.startsWith(start))?.click());

test('open own data: questions, decisions in force, and how the sheets were understood', async () => {
  await show({ fleet: own });
  expect(headings()).toEqual([
    'Questions',
    'Decisions in force',
    'Workspace',
    'Files',
    'How the sheets were understood',
    'Held and interpreted',
    'Journal',
  ]);
  expect(box.querySelector('.answer')?.textContent).toContain('1 question waits: 12 cells are held');
  const cells = [...box.querySelectorAll('details tbody tr > *')].map((cell) => cell.textContent);
  expect(cells).toEqual([
    'Axial play',
    '0,31 · 0,29',
    'thrust play, as found, unit of measure not in the header',
    'likely',
    'the header says axial play',
  ]);
  expect(box.textContent).not.toMatch(/\b(undefined|null|NaN|Infinity|object Object)\b/);
});

test('answers are sent, taken back by id, and the focus goes to the sentence that stays', async () => {
  await show({ fleet: own });
  press('Apply');
  expect(decide).not.toHaveBeenCalled();
  act(() => box.querySelector<HTMLInputElement>('fieldset input')?.click());
  press('Apply 1 answer');
  expect(decide.mock.calls).toEqual([[[expect.objectContaining({ id: question().id, answer: 'mm' })]]]);
  expect(document.activeElement).toBe(box.querySelector('.answer'));
  press('Take back');
  expect(takeBack.mock.calls).toEqual([[['q9']]]);
});

test('a failed attempt asks its own questions', async () => {
  await show({ fleet: fleet(), attempt });
  expect(headings()).toContain('Questions');
  expect(headings()).toContain('How the sheets were understood');
  expect(box.querySelector('.answer')?.textContent).toContain('About the files that could not be used, 1');
});

test('the demo fleet asks nothing', async () => {
  await show({ fleet: fleet() });
  expect(headings()).toEqual(['Workspace', 'Files', 'Held and interpreted']);
});

test('other pages say how many questions wait, with the way to them', () => {
  act(() => root.render(<WaitingQuestions questions={[question(), question()]} />));
  expect(box.textContent).toBe('2 questions about your files wait on the Records page.');
  expect(box.querySelector('a')?.getAttribute('href')).toMatch(/^\/records\/?#questions$/);
  act(() => root.render(<WaitingQuestions questions={[]} />));
  expect(box.textContent).toBe('');
});
