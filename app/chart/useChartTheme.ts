'use client';

import { useLayoutEffect, useState } from 'react';
import type { ChartTheme } from '../../lib/charts/theme';
import { readTheme } from './readTheme';

const conditions = ['(prefers-color-scheme: dark)', '(forced-colors: active)', '(prefers-contrast: more)'];

const listeners = new Set<(theme: ChartTheme) => void>();

/** The theme in force once it has been read: that has the browser work out styles anew, so it is done once for all charts. */
let known: ChartTheme | null = null;

function read(): ChartTheme {
  known = readTheme();
  for (const listener of listeners) listener(known);
  return known;
}

/** Reads the theme, and from then on anew whenever the reader's settings change. */
function readAndFollow(): ChartTheme {
  for (const condition of conditions) window.matchMedia(condition).addEventListener('change', read);
  return read();
}

/** The theme for charts on the screen; follows the reader's colour settings. Null before the first chart is mounted. */
export function useChartTheme(): ChartTheme | null {
  const [theme, setTheme] = useState(known);
  useLayoutEffect(() => {
    listeners.add(setTheme);
    setTheme(known ?? readAndFollow());
    return () => {
      listeners.delete(setTheme);
    };
  }, []);
  return theme;
}
