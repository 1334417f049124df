import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach } from 'vitest';

/** A box in the document with a root in it: new before each test of the file, gone after it. */
export interface Mounted {
  readonly root: Root;
  readonly box: HTMLElement;
}

/** Has every test of the file begin with an empty box, see Mounted. */
export function mounted(tag: 'div' | 'main' = 'div'): Mounted {
  const now = {} as { root: Root; box: HTMLElement };
  beforeEach(() => {
    Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
    now.box = document.body.appendChild(document.createElement(tag));
    now.root = createRoot(now.box);
  });
  afterEach(() => {
    act(() => now.root.unmount());
    now.box.remove();
  });
  return now;
}
