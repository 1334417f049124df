'use client';

import { useSyncExternalStore } from 'react';
import { flushSync } from 'react-dom';

const listeners = new Set<() => void>();
let printing = false;

/** Sets the state and has it drawn at once: the browser takes its copy as soon as the event ends. */
function change(now: boolean): void {
  printing = now;
  document.documentElement.classList.toggle('printing', now);
  flushSync(() => {
    for (const listener of listeners) listener();
  });
}

const before = () => change(true);
const after = () => change(false);

function subscribe(listener: () => void): () => void {
  if (listeners.size === 0) {
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
  }
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
    if (listeners.size > 0) return;
    window.removeEventListener('beforeprint', before);
    window.removeEventListener('afterprint', after);
  };
}

/** Whether the page is being printed; what depends on it is drawn before the browser takes its copy. */
export function usePrinting(): boolean {
  return useSyncExternalStore(
    subscribe,
    () => printing,
    () => false,
  );
}
