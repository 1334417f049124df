/** Longest wait for an idle moment, ms. */
const patience_ms = 400;

/** Calls back once the page has drawn itself and has nothing to do; the returned function calls it off. */
export function whenIdle(callback: () => void): () => void {
  if (typeof requestIdleCallback === 'undefined') {
    const timer = setTimeout(callback, 50);
    return () => clearTimeout(timer);
  }
  const handle = requestIdleCallback(callback, { timeout: patience_ms });
  return () => cancelIdleCallback(handle);
}
