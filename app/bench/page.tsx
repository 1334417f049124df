import type { Metadata } from 'next';
import { Suspense } from 'react';
import { BenchPage } from './BenchPage';

export const metadata: Metadata = { title: 'Bench' };

/** Bench: what should the fitter expect, and are these readings right? */
export default function Page() {
  return (
    <Suspense fallback={<h1>Bench</h1>}>
      <BenchPage />
    </Suspense>
  );
}
