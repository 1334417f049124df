'use client';

import Link from 'next/link';

interface PageErrorProps {
  readonly error: Error;
  readonly reset: () => void;
}

/** Address of a file of the site that did not come, as the loader names it; null for any other fault. */
function missingFile({ name, message }: Error): string | null {
  if (name !== 'ChunkLoadError') return null;
  return /chunk (\S+)/.exec(message)?.[1] ?? 'one of its files';
}

/** What a page shows when its own code fails or does not come: a plain message and ways on. */
export default function PageError({ error, reset }: PageErrorProps) {
  const missing = missingFile(error);
  if (missing !== null)
    return (
      <div role="alert">
        <h1>This page did not come as a whole</h1>
        <p>
          A part of it could not be loaded: {missing}. The network or the server may be gone, or the site has
          been renewed since you opened it. Your files are untouched. Check the connection, then load the page
          again.
        </p>
        <p className="buttons">
          {/* What could not be loaded is not asked for a second time by the page as it stands. */}
          <button type="button" onClick={() => location.reload()}>
            Load the page again
          </button>
        </p>
      </div>
    );
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
