/** What a reader does first when the page is to do something. */
const signs = ['pointerdown', 'pointermove', 'keydown', 'wheel', 'touchstart'] as const;

/**
 * Calls back at the reader's first sign of life, or after a pause without one; the returned function calls it off.
 *
 * A page that shows its answer already has time: what makes it live costs both cores of a small machine.
 */
export function whenWanted(callback: () => void, pause_ms: number): () => void {
  const settle = () => {
    clearTimeout(timer);
    for (const sign of signs) removeEventListener(sign, call);
  };
  const call = () => {
    settle();
    callback();
  };
  const timer = setTimeout(call, pause_ms);
  for (const sign of signs) addEventListener(sign, call, { passive: true });
  return settle;
}
