import { measureElement, type Virtualizer } from '@tanstack/react-virtual';

/*
 * Asking for a size has the browser lay the whole page out at once; on a page with long tables that was the longest part of
 * putting it up. Observers say sizes when they are known anyway, and before anything is painted.
 */

type RowVirtualizer = Virtualizer<HTMLElement, HTMLTableRowElement>;

/** Height of a row of one line. */
export const rowHeight_px = 30;

/** Height of a table's box before it is laid out: the most that the style sheet lets it have. */
export function boxHeight_px(): number {
  return typeof window === 'undefined' ? 0 : 0.75 * window.innerHeight;
}

/** Tells the size of the box whenever it is laid out; one far below the window keeps its guessed size. */
export function observeBox(
  { scrollElement }: RowVirtualizer,
  tell: (size_px: { readonly width: number; readonly height: number }) => void,
) {
  if (scrollElement === null || typeof ResizeObserver === 'undefined') return;
  const observer = new ResizeObserver((entries) => {
    const size = entries.at(-1)?.contentRect;
    if (size !== undefined && size.height > 0) tell(size);
  });
  observer.observe(scrollElement);
  return () => observer.disconnect();
}

/** Height of a row as an observer says it; until then the one that a row in its place had last, or that of one line. */
export function measureRow(
  row: HTMLTableRowElement,
  entry: ResizeObserverEntry | undefined,
  virtualizer: RowVirtualizer,
): number {
  if (entry !== undefined) return measureElement(row, entry, virtualizer);
  return virtualizer.itemSizeCache.get(virtualizer.indexFromElement(row)) ?? rowHeight_px;
}

/** Scrolls the box, unless it stands at its beginning and is to: that, too, would have the page laid out. */
export function scrollBox(
  offset_px: number,
  { adjustments = 0, behavior }: { readonly adjustments?: number; readonly behavior?: ScrollBehavior },
  { scrollElement, scrollOffset }: RowVirtualizer,
): void {
  const top = offset_px + adjustments;
  if (top === 0 && scrollOffset === 0) return;
  scrollElement?.scrollTo({ top, ...(behavior === undefined ? {} : { behavior }) });
}
