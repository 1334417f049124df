import type { Metadata } from 'next';
import { Suspense } from 'react';
import { SparesPage } from './SparesPage';

export const metadata: Metadata = { title: 'Spares' };

/** Spares: what to order, how many, by which day? */
export default function Page() {
  return (
    <>
      <h1>Spares</h1>
      <Suspense>
        <SparesPage />
      </Suspense>
    </>
  );
}
