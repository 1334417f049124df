'use client';

import { keptWords } from '../words/keptWords';
import { useKept } from './useKeptState';

/** Whether what was brought in and decided is kept, in the title block of every page. */
export function KeptBlock() {
  const { state: kept } = useKept();
  const words = kept === null ? null : keptWords(kept);
  if (words === null) return null;
  return (
    <div>
      <dt>Kept</dt>
      <dd>{words}</dd>
    </div>
  );
}
