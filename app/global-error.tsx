'use client';

/** The last resort, when even the frame of the pages fails. */
export default function FrameError({ error }: { readonly error: Error }) {
  return (
    <html lang="en-GB">
      <body>
        <main>
          <h1>Endfloat could not be shown</h1>
          <p>A fault stopped it: {error.message}. Your files are untouched. Reload the page to try again.</p>
        </main>
      </body>
    </html>
  );
}
