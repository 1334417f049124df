'use client';

import { useEffect } from 'react';
import { useEngine } from '../engine/EngineProvider';
import { startDrawing } from './drawingClient';

/** Openings that are over sooner leave no time in which to make ready for their pictures. */
const longOpening_ms = 1_500;

/** Has the part that draws started while a long opening is under way, so that the pictures after it need not wait for it. */
export function DrawingReady() {
  const { work } = useEngine().state;
  const isWorking = work !== null;
  useEffect(() => {
    if (!isWorking) return;
    const timer = setTimeout(startDrawing, longOpening_ms);
    return () => clearTimeout(timer);
  }, [isWorking]);
  return null;
}
