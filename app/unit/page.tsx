import type { Metadata } from 'next';
import { Suspense } from 'react';
import { UnitPage } from './UnitPage';

export const metadata: Metadata = { title: 'Unit' };

/** Unit: what is this unit doing, and why does the tool say so? */
export default function Page() {
  return (
    <Suspense fallback={<h1>Unit</h1>}>
      <UnitPage />
    </Suspense>
  );
}
