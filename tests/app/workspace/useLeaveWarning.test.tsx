// @vitest-environment happy-dom
import { act } from 'react';
import { expect, test } from 'vitest';
import { useLeaveWarning } from '../../../app/workspace/useLeaveWarning';
import type { KeptState } from '../../../lib/analysis/engine/kept/KeptState';
import { mounted } from '../mounted';

const now = mounted();

const saved: KeptState = {
  number: 1,
  saving: 'saved',
  notKept: null,
  files: 2,
  entries: 0,
  writes: true,
  takenOver: false,
  changedElsewhere: false,
  aside: [],
};

function Probe({ state }: { readonly state: KeptState | null }) {
  useLeaveWarning(state);
  return null;
}

/** Whether the browser would ask before leaving. */
function asks(state: KeptState | null): boolean {
  act(() => now.root.render(<Probe state={state} />));
  const event = new Event('beforeunload', { cancelable: true });
  window.dispatchEvent(event);
  return event.defaultPrevented;
}

test('the browser asks before it leaves while something is being saved, and at no other time', () => {
  expect(asks(null)).toBe(false);
  expect(asks(saved)).toBe(false);
  expect(asks({ ...saved, saving: 'saving' })).toBe(true);
  // Nothing of one's own: what is written then is which data were open last.
  expect(asks({ ...saved, saving: 'saving', files: 0 })).toBe(false);
  expect(asks({ ...saved, saving: 'saving', files: 0, entries: 1 })).toBe(true);
  expect(asks({ ...saved, number: 2 })).toBe(false);
});
