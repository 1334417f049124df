'use client';

import { type CSSProperties, type PointerEvent, type RefObject, useState } from 'react';
import { type PlotPlace, placeInPlot } from '../../lib/charts/placeInPlot';
import type { Plot } from '../../lib/charts/plotOf';
import styles from './chart.module.css';

/** Where the pointer is in a picture: px from its edges, and what the axes say there. */
export interface Pointed {
  readonly left_px: number;
  readonly top_px: number;
  readonly place: PlotPlace;
}

/** Follows the pointer over a picture; null outside of its axes. */
export function usePointed(
  box: RefObject<HTMLElement | null>,
  plot: Plot | null,
): readonly [Pointed | null, (event: PointerEvent | null) => void] {
  const [pointed, setPointed] = useState<Pointed | null>(null);
  const follow = (event: PointerEvent | null) => {
    const drawn = box.current?.querySelector('svg');
    if (event === null || plot === null || drawn == null) return setPointed(null);
    const edge = drawn.getBoundingClientRect();
    const [left_px, top_px] = [event.clientX - edge.left, event.clientY - edge.top];
    const place = placeInPlot(plot, left_px, top_px);
    setPointed(place === null ? null : { left_px, top_px, place });
  };
  return [pointed, follow];
}

interface CrosshairProps {
  readonly pointed: Pointed;
  readonly plot: Plot;
}

/** Two rules across the axes through the pointer. */
export function Crosshair({ pointed, plot }: CrosshairProps) {
  const px = {
    '--at-left': pointed.left_px,
    '--at-top': pointed.top_px,
    '--plot-left': plot.x.from_px,
    '--plot-right': plot.x.to_px,
    '--plot-top': plot.y.to_px,
    '--plot-bottom': plot.y.from_px,
  };
  const style: CSSProperties = Object.fromEntries(
    Object.entries(px).map(([name, value]) => [name, `${value}px`]),
  );
  return (
    <div className={styles.crosshair} style={style} aria-hidden="true">
      <div className={styles.upright} />
      <div className={styles.level} />
    </div>
  );
}
