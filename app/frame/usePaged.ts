'use client';

import { useMemo, useState } from 'react';

/** The rows of one page out of many, and a way to another page (from 0). */
export function usePaged<Row>(rows: readonly Row[], step: number) {
  const [page, onPage] = useState(0);
  // Fewer rows than before may leave the page behind their end.
  const first = page * step < rows.length ? page * step : 0;
  const shown = useMemo(() => rows.slice(first, first + step), [rows, first, step]);
  return { first, shown, onPage };
}
