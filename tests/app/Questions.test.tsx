// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Questions } from '../../app/records/Questions';
import type { Question } from '../../lib/analysis/types';
import type { AnswerDecision } from '../../lib/records/decisions/Decision';
import { questionId } from '../../lib/records/intake/Answers';
import { question } from './fixture';

const unitOf = (file: string, changes: Partial<Question> = {}) =>
  question({ id: questionId('unit of measure', file, ''), file, ...changes });
const stage = question({
  id: questionId('stage', 'b.csv', 'play'),
  file: 'b.csv',
  column: 'play',
  question: 'As found or as left?',
  choices: ['as found', 'as left'],
  guess: '',
});
const asked: readonly Question[] = [unitOf('a.csv'), unitOf('b.csv'), stage];

let root: Root;
let box: HTMLElement;
let sent: (readonly AnswerDecision[])[];

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
  sent = [];
});

afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

function show(questions: readonly Question[] = asked, busy = false) {
  act(() =>
    root.render(
      <Questions questions={questions} busy={busy} onApply={(answers) => void sent.push(answers)} />,
    ),
  );
}

const fields = () => [...box.querySelectorAll('fieldset')];
const button = (start: string) => {
  const found = [...box.querySelectorAll('button')].find((one) => one.textContent?.startsWith(start));
  if (found === undefined) throw new Error(`no button '${start}'`);
  return found;
};
const press = (start: string) => act(() => button(start).click());
const labels = (field: number) => [...(fields()[field]?.querySelectorAll('label') ?? [])];
const choose = (field: number, text: string) =>
  act(() =>
    labels(field)
      .find((label) => label.textContent === text)
      ?.querySelector('input')
      ?.click(),
  );
const checked = (field: number) =>
  labels(field)
    .filter((label) => label.querySelector('input')?.checked)
    .map((label) => label.textContent);

describe('Questions', () => {
  test('says the question, column, cells and likelier choice, and chooses nothing beforehand', () => {
    show();
    expect([...box.querySelectorAll('h3')].map((heading) => heading.textContent)).toEqual(['a.csv', 'b.csv']);
    const [first] = fields();
    expect(first?.querySelector('legend')?.textContent).toBe('Which unit of measure do these readings have?');
    const place = box.querySelector(`[id="${first?.getAttribute('aria-describedby')}"]`);
    expect(place?.textContent).toBe('Column ‘Axial play’: 12 cells wait.');
    expect(labels(0).map((label) => label.textContent)).toEqual(['mm (likelier)', 'in', 'mil', 'Not now']);
    for (const field of [0, 1, 2]) expect(checked(field)).toEqual(['Not now']);
    expect(button('Apply 0 answers').disabled).toBe(true);
    press('Apply');
    expect(sent).toEqual([]);
  });

  test('applies exactly what is chosen, all at once', () => {
    show();
    choose(0, 'in');
    choose(2, 'as left');
    choose(1, 'mil');
    choose(1, 'Not now');
    expect(sent).toEqual([]);
    expect(box.textContent).toContain('2 of 3 questions have an answer that is not applied yet.');
    press('Apply 2 answers');
    expect(sent).toEqual([
      [
        {
          kind: 'answer',
          id: questionId('unit of measure', 'a.csv', ''),
          file: 'a.csv',
          column: 'Axial play',
          question: 'Which unit of measure do these readings have?',
          answer: 'in',
        },
        {
          kind: 'answer',
          id: stage.id,
          file: 'b.csv',
          column: 'play',
          question: 'As found or as left?',
          answer: 'as left',
        },
      ],
    ]);
  });

  test('the likelier choice of a kind is chosen for all of it, and applied only when asked', () => {
    show();
    press('Take the likelier choice for all 2 questions of this kind');
    expect([0, 1, 2].map(checked)).toEqual([['mm (likelier)'], ['mm (likelier)'], ['Not now']]);
    expect(sent).toEqual([]);
    press('Put all back');
    expect([0, 1, 2].map(checked)).toEqual([['Not now'], ['Not now'], ['Not now']]);
    press('Take the likelier choice');
    press('Apply 2 answers');
    expect(sent[0]?.map(({ file, answer }) => [file, answer])).toEqual([
      ['a.csv', 'mm'],
      ['b.csv', 'mm'],
    ]);
  });

  test('questions asked anew start without a choice', () => {
    show();
    choose(0, 'in');
    show(asked);
    expect(checked(0)).toEqual(['in']);
    show([...asked]);
    expect(checked(0)).toEqual(['Not now']);
  });

  test('nothing can be applied while work is under way', () => {
    show();
    choose(0, 'in');
    show(asked, true);
    expect(button('Apply 1 answer').disabled).toBe(true);
  });

  test('over 30 are paged; choices of other pages are kept and applied too', () => {
    const many = Array.from({ length: 65 }, (_, index) => unitOf(`${index}.csv`, { guess: '' }));
    show(many);
    expect(fields()).toHaveLength(30);
    choose(0, 'mil');
    press('Next 30');
    press('Next 30');
    expect(box.textContent).toContain('Questions 61 to 65 of 65 questions');
    expect(document.activeElement?.id).toBe('questions');
    expect(fields()).toHaveLength(5);
    expect(button('Next 30').disabled).toBe(true);
    choose(4, 'mm');
    press('Apply 2 answers');
    expect(sent[0]?.map(({ file, answer }) => [file, answer])).toEqual([
      ['0.csv', 'mil'],
      ['64.csv', 'mm'],
    ]);
  });

  test('on paper all of them are drawn', () => {
    show(Array.from({ length: 65 }, (_, index) => unitOf(`${index}.csv`)));
    act(() => void window.dispatchEvent(new Event('beforeprint')));
    expect(fields()).toHaveLength(65);
    act(() => void window.dispatchEvent(new Event('afterprint')));
    expect(fields()).toHaveLength(30);
  });

  test('without a question there is nothing', () => {
    show([]);
    expect(box.textContent).toBe('');
  });
});
