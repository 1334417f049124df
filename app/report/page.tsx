import type { Metadata } from 'next';
import { Suspense } from 'react';
import { ReportPage } from './ReportPage';

export const metadata: Metadata = { title: 'Report' };

/** Report: the paper for the planning meeting. */
export default function Page() {
  return (
    <>
      <h1>Report</h1>
      <Suspense>
        <ReportPage />
      </Suspense>
    </>
  );
}
