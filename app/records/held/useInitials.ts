'use client';

import { useEffect, useState } from 'react';
import { useEngine } from '../../engine/EngineProvider';

/** The initials that decisions are signed with, remembered in this browser. */
export function useInitials(): readonly [string, (initials: string) => void] {
  const { initials, signAs } = useEngine();
  const [signedBy, setSignedBy] = useState<string | null>(null);
  useEffect(() => {
    let stale = false;
    initials().then(
      (found) => !stale && setSignedBy((typed) => typed ?? found),
      () => {},
    );
    return () => {
      stale = true;
    };
  }, [initials]);
  const sign = (text: string) => {
    setSignedBy(text);
    signAs(text.trim());
  };
  return [signedBy ?? '', sign];
}
