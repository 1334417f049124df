import type { Metadata } from 'next';
import { Suspense } from 'react';
import { Cautions } from '../frame/Cautions';
import { ExpectedTables } from './ExpectedTables';
import { RecordsPage } from './RecordsPage';

export const metadata: Metadata = { title: 'Records' };

/** Records: what came in, what was held, and why? */
export default function Page() {
  return (
    <>
      <h1>Records</h1>
      <Suspense>
        <RecordsPage />
      </Suspense>
      <ExpectedTables />
      <h2>Cautions</h2>
      <Cautions />
    </>
  );
}
