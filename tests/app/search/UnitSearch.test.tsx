// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { initialState } from '../../../app/engine/engineState';
import { UnitSearch } from '../../../app/search/UnitSearch';
import type { FleetResult } from '../../../lib/analysis/types';
import { accessFaults } from '../accessFaults';
import { fleet, unit } from '../fixture';

const engine = vi.hoisted(() => ({ current: {} as unknown }));
const push = vi.hoisted(() => vi.fn<(address: string) => void>());
vi.mock('../../../app/engine/EngineProvider', () => ({ useEngine: () => engine.current }));
vi.mock('next/navigation', () => ({ useRouter: () => ({ push }) }));

let root: Root;
let box: HTMLElement;
beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
  push.mockClear();
});
afterEach(() => {
  act(() => root.unmount());
  box.remove();
});

async function show(open: FleetResult | null, isAtWork = false) {
  engine.current = { state: { ...initialState, fleet: open, work: isAtWork ? initialState.work : null } };
  await act(async () =>
    root.render(
      <>
        <UnitSearch />
        <main id="content" tabIndex={-1} />
      </>,
    ),
  );
}
const field = () => box.querySelector('input') as HTMLInputElement;
const options = () => [...box.querySelectorAll('[role=option]')];
const marked = () => {
  const named = document.getElementById(field().getAttribute('aria-activedescendant') ?? '');
  expect(options().filter((one) => one.getAttribute('aria-selected') === 'true')).toEqual([named]);
  return named?.querySelector('b')?.textContent;
};
const said = () => box.querySelector('[role=status]')?.textContent;
const type = (text: string) =>
  act(async () => {
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field(), text);
    field().dispatchEvent(new Event('input', { bubbles: true }));
  });
const key = (name: string) =>
  act(async () =>
    field().dispatchEvent(new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true })),
  );

describe('finding a unit from the head of any page', () => {
  test('letters of serial or engine list units, arrows mark one round the list, Enter lands on its page', async () => {
    await show(fleet());
    expect(field().getAttribute('aria-expanded')).toBe('false');
    await type('l11');
    expect([field().getAttribute('aria-expanded'), said()]).toEqual(['true', '2 units match.']);
    expect(box.querySelector(`[id="${field().getAttribute('aria-controls')}"]`)?.getAttribute('role')).toBe(
      'listbox',
    );
    expect(marked()).toBe('L-1102');
    await key('ArrowDown');
    expect(marked()).toBe('L-1107');
    await key('ArrowDown');
    expect(marked()).toBe('L-1102');
    await key('ArrowUp');
    expect(marked()).toBe('L-1107');
    expect(await accessFaults(box)).toEqual([]);
    await key('Enter');
    expect(push.mock.calls).toEqual([['/unit/?id=L-1107']]);
    expect([field().value, options().length]).toEqual(['', 0]);
    expect(document.activeElement?.id).toBe('content');
    await type('NS-3');
    expect(options().map((one) => one.textContent)).toEqual(['H-2001 Heron, North Skerry, NS-3, A']);
    await act(async () => (options()[0] as HTMLElement).click());
    expect(push.mock.calls[1]).toEqual(['/unit/?id=H-2001']);
  });

  test('Escape closes the list and then empties the field; leaving it closes the list', async () => {
    await show(fleet());
    await type('L');
    await key('Escape');
    expect([field().value, options().length, said()]).toEqual(['L', 0, '']);
    await key('ArrowDown');
    expect(options()).toHaveLength(2);
    await key('Escape');
    await key('Escape');
    expect(field().value).toBe('');
    await type('L');
    await act(async () => field().dispatchEvent(new FocusEvent('focusout', { bubbles: true })));
    expect(options()).toHaveLength(0);
  });

  test('of ten thousand units eight are listed, and all are counted', async () => {
    await show(fleet({ units: Array.from({ length: 10_000 }, (_, place) => unit({ unit: `L-${place}` })) }));
    await type('L');
    expect([options().length, said()]).toEqual([8, '10\u202f000 units match; the first 8 are listed.']);
    await type('L-9999');
    expect([options().length, said(), marked()]).toEqual([1, '1 unit matches.', 'L-9999']);
  });

  test('says so where nothing matches, no fleet is open or one is being opened, and Enter goes nowhere', async () => {
    await show(fleet());
    await type('Zz');
    expect(said()).toBe('No unit matches ‘Zz’: type letters or digits of its serial or engine.');
    await key('Enter');
    await show(null);
    expect(said()).toBe('No fleet is open: open one on the Records page to find its units here.');
    expect(await accessFaults(box)).toEqual([]);
    await show(null, true);
    expect(said()).toBe('The fleet is being opened; units are found here as soon as it is.');
    await key('Enter');
    await key('ArrowDown');
    expect(push).not.toHaveBeenCalled();
  });
});
