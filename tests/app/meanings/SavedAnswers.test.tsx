// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { MeaningsGiven } from '../../../app/records/meanings/MeaningsGiven';
import { SavedAnswers } from '../../../app/records/SavedAnswers';
import type { Decision, JournalEntry } from '../../../lib/records/decisions/Decision';
import { meaningDecision } from '../../../lib/records/decisions/meaningDecision';
import { readSavedDecisions, savedDecisions } from '../../../lib/records/decisions/savedDecisions';

const engine = vi.hoisted(() => ({ journal: [] as unknown }));
vi.mock('../../../app/engine/EngineProvider', () => ({
  useEngine: () => ({ state: { work: null }, request: { journal: async () => engine.journal } }),
}));
const saved = vi.hoisted(() => ({ files: [] as [string, string][] }));
vi.mock('../../../app/records/saveFile', () => ({
  saveFile: (name: string, text: string) => void saved.files.push([name, text]),
}));

const say = (index: number, role: string, changes = {}) =>
  meaningDecision({
    file: 'mute.csv',
    shape: '2 columns, 0f',
    index,
    column: `M${index}`,
    role,
    characteristic: null,
    stage: null,
    clock: null,
    uom: null,
    ...changes,
  });
const decisions = [
  say(0, 'unit'),
  say(1, 'reading', { characteristic: 'tip_turbine', stage: 'left', clock: '9', uom: 'um' }),
];

let root: Root;
let box: HTMLElement;
let opened: (readonly Decision[])[];

beforeEach(async () => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
  opened = [];
  saved.files = [];
  engine.journal = [];
  await act(async () =>
    root.render(<SavedAnswers sheets={[]} onOpen={(given) => void opened.push(given)} />),
  );
});

afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

const status = () => box.querySelector('[role=status]')?.textContent;
async function save(): Promise<void> {
  await act(async () => box.querySelector('button')?.click());
}
async function open(name: string, text: string): Promise<void> {
  const input = box.querySelector('input') as HTMLInputElement;
  Object.defineProperty(input, 'files', { configurable: true, value: [new File([text], name)] });
  await act(async () => void input.dispatchEvent(new Event('change', { bubbles: true })));
  await vi.waitFor(async () => {
    await act(async () => {});
    expect(status()).not.toBe('');
  });
}

test('what is in force is saved; nothing is saved where nothing is', async () => {
  await save();
  expect(saved.files).toEqual([]);
  expect(status()).toContain('There is nothing to save');
  engine.journal = decisions.map(
    (decision, index): JournalEntry => ({
      number: index + 1,
      at: '',
      by: '',
      act: 'decided',
      decision,
      before: null,
    }),
  );
  await save();
  expect(saved.files.map(([name]) => name)).toEqual(['endfloat-answers.json']);
  expect(readSavedDecisions(saved.files[0]?.[1] ?? '')).toEqual(decisions);
  expect(status()).toBe('2 answers and meanings saved in endfloat-answers.json.');
});

test('a saved file is taken whole', async () => {
  await open('of-a-friend.json', savedDecisions(decisions, []));
  expect(opened).toEqual([decisions]);
  expect(status()).toBe('2 answers and meanings taken from of-a-friend.json.');
});

test.each([
  ['sheet.csv', 'unit;date', 'it is not in JSON'],
  ['empty.json', savedDecisions([], []), 'It holds no answer'],
])('another file is refused with the reason: %s', async (name, text, reason) => {
  await open(name, text);
  expect(opened).toEqual([]);
  expect(status()).toContain(`${name} was not taken. `);
  expect(status()).toContain(reason);
});

test('meanings in force stand together by shape and are taken back together', () => {
  const back: (readonly string[])[] = [];
  act(() =>
    root.render(
      <MeaningsGiven meanings={decisions} busy={false} onTakeBack={(ids) => void back.push(ids)} />,
    ),
  );
  expect([...box.querySelectorAll('li')].map((line) => line.textContent)).toEqual([
    '‘M0’: unit',
    '‘M1’: reading, tip turbine, as left, 9 o’clock, µm',
  ]);
  act(() => box.querySelector('button')?.click());
  expect(back).toEqual([decisions.map(({ id }) => id)]);
});
