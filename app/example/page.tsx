import type { Metadata } from 'next';
import { ExamplePage } from './ExamplePage';

export const metadata: Metadata = { title: 'From file to order' };

/** Example: how does a reading in a file become an order of a part? */
export default function Page() {
  return (
    <>
      <h1>From file to order</h1>
      <ExamplePage />
    </>
  );
}
