'use client';

import { useEffect, useRef } from 'react';

const typesWithoutText = new Set([
  'checkbox',
  'radio',
  'button',
  'submit',
  'reset',
  'file',
  'range',
  'color',
]);

/** Whether keys typed there change a text, which has an undo of its own. */
function isTextField(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !typesWithoutText.has(target.type);
  return target instanceof HTMLTextAreaElement || target.isContentEditable;
}

/** Calls on Ctrl+Z and Ctrl+Shift+Z (or with the command key) outside text fields and open dialogs. */
export function useUndoKeys(onKeys: (way: 'undo' | 'redo') => void): void {
  const latest = useRef(onKeys);
  useEffect(() => {
    latest.current = onKeys;
  });
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const isKey = (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'z';
      if (!isKey || isTextField(event.target) || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      latest.current(event.shiftKey ? 'redo' : 'undo');
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, []);
}
