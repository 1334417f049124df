/**
 * Loads the scripts that the page names as links with data-run: where the first view shows the answer of the site's own fleet,
 * at the reader's first sign of life or after a pause without one, else as soon as the first view is drawn. A page that shows
 * its answer already has time, and what makes it live costs both cores of a small machine.
 *
 * It stands alone: pages carry its text as an inline script.
 */
export function loadWhenWanted() {
  const signs = ['pointerdown', 'pointermove', 'keydown', 'wheel', 'touchstart'];
  const pause_ms = 8_000;
  const load = () => {
    for (const sign of signs) removeEventListener(sign, load);
    for (const link of document.querySelectorAll('link[data-run]')) {
      link.removeAttribute('data-run');
      // The framework knows its parts by the address as it is written.
      const src = link.getAttribute('href');
      document.head.append(Object.assign(document.createElement('script'), { src, async: true }));
    }
  };
  const fetchOnly = () => {
    for (const link of document.querySelectorAll('link[data-run]')) {
      Object.assign(link, { rel: 'preload', as: 'script', fetchPriority: 'low' });
    }
  };
  const shown = document.querySelector('[data-first="view"]')?.dataset.firstShown;
  const image = document.querySelector('[data-first="picture"] img');
  const ready = image === null ? Promise.resolve() : image.decode().catch(() => {});
  const whenDrawn = (act) => ready.then(() => requestAnimationFrame(() => setTimeout(act)));
  if (shown === 'site') {
    for (const sign of signs) addEventListener(sign, load, { passive: true });
    whenDrawn(fetchOnly);
    setTimeout(load, pause_ms);
  } else {
    whenDrawn(load);
    // A page in the background is not drawn, and is loaded all the same.
    setTimeout(load, 700);
  }
}
