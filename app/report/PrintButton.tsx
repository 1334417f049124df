'use client';

import { useEffect, useState } from 'react';

const look_ms = 150;
/** After so long a print is better without a picture than none at all. */
const patience_ms = 30_000;

function areDrawn(): boolean {
  return document.querySelector('main [role="img"]:empty') === null;
}

/** Prints as soon as every picture is drawn, those for paper included. */
export function PrintButton() {
  const [since, setSince] = useState<number | null>(null);
  useEffect(() => {
    if (since === null) return;
    const timer = setInterval(() => {
      if (!areDrawn() && performance.now() - since < patience_ms) return;
      setSince(null);
      window.print();
    }, look_ms);
    return () => clearInterval(timer);
  }, [since]);
  return (
    <p className="buttons">
      <button type="button" disabled={since !== null} onClick={() => setSince(performance.now())}>
        Print or save as PDF
      </button>
      <span role="status">{since !== null && 'The pictures for paper are being drawn.'}</span>
    </p>
  );
}
