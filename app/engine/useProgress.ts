'use client';

import { createContext, useContext } from 'react';
import type { Progress } from '../../lib/analysis/types';

/** How far the work of the engine is; apart from its state, since hundreds of steps must not draw whole pages anew. */
export const ProgressContext = createContext<Progress | null>(null);

/** How far the work under way is, or null before its first sign of life. */
export function useProgress(): Progress | null {
  return useContext(ProgressContext);
}
