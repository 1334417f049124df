'use client';

import { useEffect, useState } from 'react';
import type { FleetResult, UnitResult } from '../../lib/analysis/types';
import { useEngine } from '../engine/EngineProvider';

export type LoadedUnit =
  | { readonly status: 'loading' }
  | { readonly status: 'unknown' }
  | { readonly status: 'failed'; readonly message: string }
  | { readonly status: 'ready'; readonly result: UnitResult };

interface Answer {
  readonly fleet: FleetResult;
  readonly id: string;
  readonly loaded: LoadedUnit;
}

/** Everything about one unit of the open fleet, asked from the worker. */
export function useUnit(fleet: FleetResult, id: string): LoadedUnit {
  const { unit } = useEngine();
  const [answer, setAnswer] = useState<Answer | null>(null);
  const known = fleet.units.some((candidate) => candidate.unit === id);
  useEffect(() => {
    if (!known) return;
    let stale = false;
    const keep = (loaded: LoadedUnit) => {
      if (!stale) setAnswer({ fleet, id, loaded });
    };
    unit(id).then(
      (result) => keep(result === null ? { status: 'unknown' } : { status: 'ready', result }),
      (error: unknown) =>
        keep({
          status: 'failed',
          message: `The records of ${id} could not be read: ${error instanceof Error ? error.message : String(error)}`,
        }),
    );
    return () => {
      stale = true;
    };
  }, [unit, fleet, id, known]);
  if (!known) return { status: 'unknown' };
  return answer?.fleet === fleet && answer.id === id ? answer.loaded : { status: 'loading' };
}
