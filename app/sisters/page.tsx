import type { Metadata } from 'next';
import { Suspense } from 'react';
import { SistersPage } from './SistersPage';

export const metadata: Metadata = { title: 'Sisters' };

/** Sisters: who wears unlike the others? */
export default function Page() {
  return (
    <>
      <h1>Sisters</h1>
      <Suspense>
        <SistersPage />
      </Suspense>
    </>
  );
}
