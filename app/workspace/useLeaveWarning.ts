import { useEffect } from 'react';
import type { KeptState } from '../../lib/analysis/engine/kept/KeptState';

const warn = (event: BeforeUnloadEvent) => event.preventDefault();

/** Has the browser ask before the page is left while something of one's own is still being saved: it would be lost. */
export function useLeaveWarning(state: KeptState | null): void {
  const isSaving = state?.saving === 'saving' && state.files + state.entries > 0;
  useEffect(() => {
    if (!isSaving) return;
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [isSaving]);
}
