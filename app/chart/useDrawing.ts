import { type RefObject, useCallback, useEffect, useState } from 'react';
import type { DrawnPicture } from '../../lib/charts/drawSvg';
import type { ChartTheme, LayeredSpec } from '../../lib/charts/theme';
import { inTurn } from '../engine/inTurn';
import { useWriting } from '../writing/useWriting';
import { drawInWorker } from './drawingClient';
import { placeSvg } from './placeSvg';

/** Makes the specification for a theme, and for a box too narrow for long words. */
export type BuildSpec = (theme: ChartTheme, narrow: boolean) => LayeredSpec;

/** Why a picture could not be drawn, and the way to have it drawn after all. */
export interface NotDrawn {
  readonly message: string;
  readonly tryAgain: () => void;
}

const narrowBelow_px = 600;
const narrowest_px = 200;

/**
 * Draws a picture into a box in the worker, anew for a new specification, theme, width or way of writing numbers; what is drawn stays until the
 * next is ready. A null width or theme waits.
 *
 * @param onDrawn told of every picture; keep it stable
 * @returns why it could not be drawn, or null
 */
export function useDrawing(
  box: RefObject<HTMLElement | null>,
  build: BuildSpec,
  theme: ChartTheme | null,
  width_px: number | null,
  onDrawn?: (picture: DrawnPicture) => void,
): NotDrawn | null {
  const [failure, setFailure] = useState<string | null>(null);
  const [tries, setTries] = useState(0);
  const tryAgain = useCallback(() => setTries((before) => before + 1), []);
  const writing = useWriting();
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is built has the style of writing in it, and whoever tries again draws the same once more.
  useEffect(() => {
    if (theme === null || width_px === null) return;
    let stale = false;
    const width = Math.max(narrowest_px, Math.floor(width_px));
    const draw = () => (stale ? null : drawInWorker(build(theme, width < narrowBelow_px), width));
    inTurn(draw).then(
      (picture) => {
        if (stale || picture === null || box.current === null) return;
        placeSvg(box.current, picture.svg);
        onDrawn?.(picture);
        setFailure(null);
      },
      (error: unknown) => {
        if (!stale) setFailure(error instanceof Error ? error.message : String(error));
      },
    );
    return () => {
      stale = true;
    };
  }, [box, build, theme, width_px, writing, onDrawn, tries]);
  return failure === null ? null : { message: failure, tryAgain };
}
