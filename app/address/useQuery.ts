'use client';

import { useSearchParams } from 'next/navigation';
import { useCallback } from 'react';

/** The address's query and a way to change it in place: empty values leave it. A link reproduces the view. */
export function useQuery(): readonly [URLSearchParams, (changes: Readonly<Record<string, string>>) => void] {
  const query = useSearchParams();
  const change = useCallback((changes: Readonly<Record<string, string>>) => {
    const next = new URLSearchParams(window.location.search);
    for (const [name, value] of Object.entries(changes)) {
      if (value === '') next.delete(name);
      else next.set(name, value);
    }
    const text = next.toString();
    window.history.replaceState(null, '', text === '' ? window.location.pathname : `?${text}`);
  }, []);
  return [query, change];
}
