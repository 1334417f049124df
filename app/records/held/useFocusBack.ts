'use client';

import { type RefObject, useEffect, useRef } from 'react';

/** What takes the focus when a form closes and the focus would be lost with it. */
export function useFocusBack<Element extends HTMLElement>(isOpen: boolean): RefObject<Element | null> {
  const target = useRef<Element>(null);
  const wasOpen = useRef(false);
  useEffect(() => {
    if (wasOpen.current && !isOpen && document.activeElement === document.body) target.current?.focus();
    wasOpen.current = isOpen;
  }, [isOpen]);
  return target;
}
