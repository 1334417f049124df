/** Names under which the browser remembers what the first view is made of. */
export const firstViewNames = { lastPicture: 'endfloat last picture', fleetShown: 'endfloat fleet shown' };

/**
 * Fills the Fleet page's first view with what is at hand before anything is opened: the picture that this browser showed of
 * own files last or, where it knows of no own files, the answer that was put into the page when the site was made. A view
 * that the address narrows is another picture and stays empty.
 *
 * It stands alone: the site's pages carry its text as an inline script, so that it runs before the framework is loaded; and
 * twice, before and after the answer of the site, since what is kept of own files need not wait until that is read.
 *
 * @param names see firstViewNames
 */
export function fillFirstView(names) {
  const slot = (name) => document.querySelector(`[data-first="${name}"]`);
  const view = slot('view');
  if (view === null || location.search !== '' || view.dataset.firstShown !== undefined) return;
  const fill = (shown, sentence, remarks, picture) => {
    slot('sentence').textContent = sentence;
    slot('remarks').replaceChildren(
      ...remarks.map((remark) => Object.assign(document.createElement('li'), { textContent: remark })),
    );
    slot('picture').replaceChildren(picture);
    view.dataset.firstShown = shown;
  };
  let isOwn = false;
  try {
    isOwn = localStorage.getItem(names.fleetShown) === 'own';
    const { sentence, remarks, svg } = JSON.parse(localStorage.getItem(names.lastPicture) ?? '{}');
    if (typeof sentence === 'string' && Array.isArray(remarks) && typeof svg === 'string') {
      const image = document.createElement('img');
      image.alt = '';
      image.src = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
      fill('own', `${sentence} (As shown last; being opened.)`, remarks, image);
      return;
    }
  } catch {
    // A browser that refuses its memory, or a torn picture: the view does without.
  }
  const text = slot('made')?.textContent;
  if (text === undefined || isOwn) return;
  const made = JSON.parse(text);
  const narrowBelow_px = 640;
  const svg = innerWidth < narrowBelow_px ? made.narrow : made.wide;
  const picture = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  fill('site', made.sentence, made.remarks, picture);
}
