'use client';

import { type ReactNode, useDeferredValue } from 'react';

/** With fewer rows than this the page is short, and what follows would move what is in sight. */
const manyRows = 60;

interface LaterProps {
  /** Rows of what stands before it. */
  readonly after: number;
  readonly children: ReactNode;
}

/**
 * What follows a picture of many rows, far below the window: it is drawn once the picture is under way, in slices between which the
 * page answers. Its room is kept, so that the end of the page does not move much.
 */
export function Later({ after, children }: LaterProps) {
  const isTime = useDeferredValue(true, after < manyRows);
  return isTime ? children : <div className="roomForTable" />;
}
