'use client';

import { useVirtualizer } from '@tanstack/react-virtual';
import type { RefObject } from 'react';
import { usePrinting } from '../frame/usePrinting';
import { boxHeight_px, measureRow, observeBox, rowHeight_px, scrollBox } from './rowSizes';

const virtualAbove = 200;
const overscan = 12;

/** Rows to draw of a long table, and the height left empty before and after them. */
export interface RowWindow {
  readonly indexes: readonly number[];
  readonly before: number;
  readonly after: number;
  readonly measure: ((row: HTMLTableRowElement | null) => void) | null;
}

/** The rows in view where there are over 200; all of them otherwise, and all of them on paper. */
export function useRowWindow(count: number, box: RefObject<HTMLElement | null>): RowWindow {
  const printing = usePrinting();
  const virtual = count > virtualAbove && !printing;
  const virtualizer = useVirtualizer<HTMLElement, HTMLTableRowElement>({
    count,
    enabled: virtual,
    getScrollElement: () => box.current,
    estimateSize: () => rowHeight_px,
    // The rows are drawn with the table, and not once more when its size is known.
    initialRect: { width: 0, height: boxHeight_px() },
    observeElementRect: observeBox,
    measureElement: measureRow,
    scrollToFn: scrollBox,
    overscan,
  });
  if (!virtual) {
    return {
      indexes: Array.from({ length: count }, (_, index) => index),
      before: 0,
      after: 0,
      measure: null,
    };
  }
  const items = virtualizer.getVirtualItems();
  return {
    indexes: items.map((item) => item.index),
    before: items[0]?.start ?? 0,
    after: virtualizer.getTotalSize() - (items.at(-1)?.end ?? 0),
    measure: virtualizer.measureElement,
  };
}
