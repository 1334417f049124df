'use client';

import { useEffect, useState } from 'react';
import type { SheetPreview } from '../../../lib/analysis/engine/EngineApi';
import type { MeaningDecision } from '../../../lib/records/decisions/Decision';
import { useEngine } from '../../engine/EngineProvider';

/** Wait after a change, so that turning through the choices with the arrow keys reads the sheet once. */
const pause_ms = 250;

interface Previewed {
  /** The latest that was read, if any; older than the meanings while `isOld`. */
  readonly preview: SheetPreview | null;
  readonly isOld: boolean;
  /** Why there is none. */
  readonly message: string | null;
}

interface Answer {
  readonly of: readonly MeaningDecision[] | null;
  readonly preview: SheetPreview | null;
  readonly message: string | null;
}

/** What a sheet would be read as with these meanings, from the worker. */
export function usePreview(file: string, meanings: readonly MeaningDecision[]): Previewed {
  const { request } = useEngine();
  const [answer, setAnswer] = useState<Answer>({ of: null, preview: null, message: null });
  useEffect(() => {
    let stale = false;
    const timer = setTimeout(() => {
      request.preview(file, meanings).then(
        (preview) => !stale && setAnswer({ of: meanings, preview, message: null }),
        (error: unknown) =>
          !stale &&
          setAnswer({
            of: meanings,
            preview: null,
            message: error instanceof Error ? error.message : String(error),
          }),
      );
    }, pause_ms);
    return () => {
      stale = true;
      clearTimeout(timer);
    };
  }, [request, file, meanings]);
  return { preview: answer.preview, isOld: answer.of !== meanings, message: answer.message };
}
