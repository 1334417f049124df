'use client';

import Link from 'next/link';

/** What a page shows when its own code fails: a plain message and ways on. */
export default function PageError({ error, reset }: { readonly error: Error; readonly reset: () => void }) {
  return (
    <div role="alert">
      <h1>This page could not be shown</h1>
      <p>A fault in the page itself stopped it: {error.message}. Your files are untouched.</p>
      <p className="buttons">
        <button type="button" onClick={reset}>
          Try again
        </button>
        <Link href="/records/">Go to Records</Link>
      </p>
    </div>
  );
}
