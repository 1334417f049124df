import type { Metadata } from 'next';
import { Suspense } from 'react';
import { TablesPage } from './TablesPage';

export const metadata: Metadata = { title: 'Tables' };

/** Tables: which limits, parts, duties and plans are in force? */
export default function Page() {
  return (
    <>
      <h1>Tables</h1>
      <Suspense>
        <TablesPage />
      </Suspense>
    </>
  );
}
