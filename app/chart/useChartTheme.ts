'use client';

import { useLayoutEffect, useState } from 'react';
import type { ChartTheme } from '../../lib/charts/theme';
import { usePrinting } from '../frame/usePrinting';
import { readTheme } from './readTheme';

const conditions = ['(prefers-color-scheme: dark)', '(forced-colors: active)', '(prefers-contrast: more)'];

export interface ThemeInForce {
  readonly theme: ChartTheme;
  readonly printing: boolean;
}

/** The theme for charts; follows the reader's colour settings, and is light while printing. Null before mounting. */
export function useChartTheme(): ThemeInForce | null {
  const printing = usePrinting();
  const [inForce, setInForce] = useState<ThemeInForce | null>(null);
  useLayoutEffect(() => {
    const read = () => setInForce({ theme: readTheme(), printing });
    const queries = conditions.map((condition) => window.matchMedia(condition));
    read();
    for (const query of queries) query.addEventListener('change', read);
    return () => {
      for (const query of queries) query.removeEventListener('change', read);
    };
  }, [printing]);
  return inForce;
}
