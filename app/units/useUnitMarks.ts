'use client';

import { useEffect } from 'react';
import { markUnit, unitAt } from './unitMarks';

/** Marks the unit that is pointed at or has the focus, in all tables and pictures of the page. */
export function useUnitMarks(): void {
  useEffect(() => {
    const abort = new AbortController();
    const options = { passive: true, signal: abort.signal };
    const mark = ({ target }: Event) => markUnit(unitAt(target));
    document.addEventListener('pointerover', mark, options);
    document.addEventListener('focusin', mark, options);
    return () => {
      abort.abort();
      markUnit(null);
    };
  }, []);
}
