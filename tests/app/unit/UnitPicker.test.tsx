// @vitest-environment happy-dom
import { act } from 'react';
import { expect, test } from 'vitest';
import { UnitPicker } from '../../../app/unit/UnitPicker';
import { fleet, unit } from '../fixture';
import { mounted } from '../mounted';

const now = mounted();

function show(count: number) {
  const units = Array.from({ length: count }, (_, place) => unit({ unit: `U-${place}` }));
  act(() => now.root.render(<UnitPicker fleet={fleet({ units })} id="" onPick={() => {}} />));
}

function type(text: string) {
  const field = now.box.querySelector('input') as HTMLInputElement;
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
  act(() => {
    set?.call(field, text);
    field.dispatchEvent(new Event('input', { bubbles: true }));
  });
}

const offered = () => [...now.box.querySelectorAll('option')].map(({ value }) => value);

test('offers every unit of a small fleet, and of a large one those that fit what is typed', () => {
  show(300);
  expect(offered()).toHaveLength(300);
  show(5_000);
  expect(offered()).toEqual([]);
  type('u-499');
  expect(offered()).toEqual(['U-499', ...Array.from({ length: 10 }, (_, last) => `U-499${last}`)]);
  type('u');
  expect(offered()).toHaveLength(300);
});
