'use client';

import { useContext, useEffect, useState } from 'react';
import type { Problem } from '../../../lib/analysis/types';
import { useEngine } from '../../engine/EngineProvider';
import { HeldForm } from './HeldForm';
import { RulingsContext } from './RulingsContext';

/** The form under a held row that was opened, with the row's whole line from the file. */
export function OpenedRow({ problem }: { readonly problem: Problem }) {
  const rulings = useContext(RulingsContext);
  const { request } = useEngine();
  const [line, setLine] = useState<string | null>(null);
  const { file, row } = problem;
  useEffect(() => {
    let stale = false;
    request.fileLine(file, row).then(
      (found) => !stale && setLine(found),
      () => !stale && setLine(null),
    );
    return () => {
      stale = true;
    };
  }, [request, file, row]);
  if (rulings === null) return null;
  return <HeldForm problems={[problem]} line={line} onRule={(ruled) => rulings.rule([problem], ruled)} />;
}
