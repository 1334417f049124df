'use client';

import { useEffect, useState } from 'react';
import { useEngine } from '../../engine/EngineProvider';

/** The initials that decisions are signed with, remembered in this browser. */
export function useInitials(): readonly [string, (initials: string) => void] {
  const { request } = useEngine();
  const [signedBy, setSignedBy] = useState<string | null>(null);
  useEffect(() => {
    let stale = false;
    request.initials().then(
      (found) => !stale && setSignedBy((typed) => typed ?? found),
      () => {},
    );
    return () => {
      stale = true;
    };
  }, [request]);
  const sign = (text: string) => {
    setSignedBy(text);
    // If the worker is gone, its failure is told where it was needed; the initials stay in the field.
    request.signAs(text.trim()).catch(() => {});
  };
  return [signedBy ?? '', sign];
}
