'use client';

import { useLayoutEffect, useState } from 'react';
import type { ChartTheme } from '../../lib/charts/theme';
import { readTheme } from './readTheme';

const conditions = ['(prefers-color-scheme: dark)', '(forced-colors: active)', '(prefers-contrast: more)'];

/** The theme for charts on the screen; follows the reader's colour settings. Null before mounting. */
export function useChartTheme(): ChartTheme | null {
  const [theme, setTheme] = useState<ChartTheme | null>(null);
  useLayoutEffect(() => {
    const read = () => setTheme(readTheme());
    const queries = conditions.map((condition) => window.matchMedia(condition));
    read();
    for (const query of queries) query.addEventListener('change', read);
    return () => {
      for (const query of queries) query.removeEventListener('change', read);
    };
  }, []);
  return theme;
}
