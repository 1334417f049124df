import type { View } from 'vega';

/** What one axis of a picture shows: values at the ends of its scale, and where those lie in the picture, px. */
export interface AxisSpan {
  readonly from: number;
  readonly to: number;
  readonly from_px: number;
  readonly to_px: number;
}

/** The scales of a picture with two straight axes. */
export interface Plot {
  readonly x: AxisSpan;
  readonly y: AxisSpan;
}

const straight: ReadonlySet<string> = new Set(['linear', 'utc']);

/** Scales as Vega keeps them: only straight ones tell a value from a place. */
interface VegaScale {
  readonly type: string;
  readonly domain: () => readonly (number | Date)[];
  readonly range: () => readonly number[];
}

function scaleOf(view: View, name: 'x' | 'y'): VegaScale | null {
  try {
    return view.scale(name) as VegaScale;
  } catch {
    // A picture without this scale: Vega throws and offers no question whether there is one.
    return null;
  }
}

/** The plot of a view that has been drawn; null if it has no two straight axes. */
export function plotOf(view: View): Plot | null {
  const padding = view.padding();
  const { left = 0, top = 0 } = typeof padding === 'number' ? { left: padding, top: padding } : padding;
  const [across, down] = view.origin();
  const span = (name: 'x' | 'y', origin_px: number): AxisSpan | null => {
    const scale = scaleOf(view, name);
    if (scale === null || !straight.has(scale.type)) return null;
    const [from, to] = scale.domain().map(Number);
    const [start, end] = scale.range();
    if (from === undefined || to === undefined || start === undefined || end === undefined) return null;
    return { from, to, from_px: origin_px + start, to_px: origin_px + end };
  };
  const x = span('x', left + across);
  const y = span('y', top + down);
  return x === null || y === null ? null : { x, y };
}
