'use client';

import type { ReactNode } from 'react';
import { NotComputed } from './NotComputed';
import type { Asked } from './useAsked';

/** Content made from an answer; until there is one, or if there is none, it says so. The last answer stays while a new one is computed. */
export function WithAnswer<Answer>({
  asked,
  children,
}: {
  readonly asked: Asked<Answer>;
  /** @param computing a newer answer is on its way */
  readonly children: (answer: Answer, computing: boolean) => ReactNode;
}) {
  if (asked.status === 'failed') return <NotComputed {...asked} />;
  if (asked.status === 'answered') return children(asked.answer, false);
  if (asked.before !== null) return children(asked.before, true);
  return <p role="status">Being computed; the answer follows here.</p>;
}
