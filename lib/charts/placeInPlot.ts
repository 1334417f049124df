import type { AxisSpan, Plot } from './plotOf';

/** Values at a place of a picture. */
export interface PlotPlace {
  readonly x: number;
  readonly y: number;
}

function valueAt({ from, to, from_px, to_px }: AxisSpan, at_px: number): number | null {
  const share = (at_px - from_px) / (to_px - from_px);
  return share >= 0 && share <= 1 ? from + share * (to - from) : null;
}

/** What the axes say of a place in the picture, px from its left and top edge; null outside of its axes. */
export function placeInPlot(plot: Plot, left_px: number, top_px: number): PlotPlace | null {
  const [x, y] = [valueAt(plot.x, left_px), valueAt(plot.y, top_px)];
  return x === null || y === null ? null : { x, y };
}
