'use client';

import { type DependencyList, useMemo, useSyncExternalStore } from 'react';
import { plainWriting, type WritingStyle, writingInForce } from '../../lib/charts/writingStyle';
import { onWritingChange } from './writingChoice';

/** How numbers and days are written; what uses it is drawn anew when the reader changes that. */
export function useWriting(): WritingStyle {
  return useSyncExternalStore(onWritingChange, writingInForce, () => plainWriting);
}

/** useMemo for what holds written numbers or days: made anew, too, when the reader changes how they are written. */
export function useWrittenMemo<Value>(make: () => Value, dependencies: DependencyList): Value {
  const writing = useWriting();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what its function uses.
  return useMemo(make, [writing, ...dependencies]);
}
