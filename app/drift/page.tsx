import type { Metadata } from 'next';
import { Suspense } from 'react';
import { DriftPage } from './DriftPage';

export const metadata: Metadata = { title: 'Drift' };

/** Drift: whose reading is moving, and since when? */
export default function Page() {
  return (
    <>
      <h1>Drift</h1>
      <Suspense>
        <DriftPage />
      </Suspense>
    </>
  );
}
