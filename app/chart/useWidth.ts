import { type RefObject, useEffect, useState } from 'react';

/** Width of a box in px, followed as it changes; null before it is laid out. */
export function useWidth(box: RefObject<HTMLElement | null>): number | null {
  const [width, setWidth] = useState<number | null>(null);
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      // A box that is not shown, as on paper, has no width to draw for.
      if (element.clientWidth > 0) setWidth(element.clientWidth);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [box]);
  return width;
}
