'use client';

import { useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import styles from './chart.module.css';
import type { BuildSpec } from './drawChart';
import { loadDrawing } from './loadDrawing';
import { useChartTheme } from './useChartTheme';

type Drawing = typeof import('./drawChart');

/** Kept once loaded, so that later drawings need not wait: the one for print must be done at once. */
let loaded: Drawing | null = null;

/** Width of the text on A4 paper, less the margins of the print style sheet. */
const printWidth_px = 680;

interface ChartProps {
  /** Keep it stable: a new function draws the chart anew. */
  readonly build: BuildSpec;
  /** What the picture is. */
  readonly label: string;
  /** What it shows, in words, for those who do not see it; nothing else carries it. */
  readonly description: string;
  readonly height_px: number;
  readonly onPick?: (datum: unknown) => void;
}

/** A picture from a Vega-Lite specification, drawn without eval, loaded only when first needed. */
export function Chart({ build, label, description, height_px, onPick }: ChartProps) {
  const box = useRef<HTMLDivElement>(null);
  const pick = useRef(onPick);
  const inForce = useChartTheme();
  const [failure, setFailure] = useState<string | null>(null);
  const captionId = useId();

  useEffect(() => {
    pick.current = onPick;
  }, [onPick]);

  useLayoutEffect(() => {
    const element = box.current;
    if (element === null || inForce === null) return;
    let remove: (() => void) | null = null;
    let gone = false;
    const fail = (error: unknown) => {
      if (!gone) setFailure(error instanceof Error ? error.message : String(error));
    };
    const draw = (drawing: Drawing) => {
      loaded = drawing;
      if (gone) return;
      try {
        const width = inForce.printing ? printWidth_px : null;
        remove = drawing.drawChart(element, build, {
          theme: inForce.theme,
          width,
          onPick: (datum) => pick.current?.(datum),
          onFailure: fail,
        });
        setFailure(null);
      } catch (error) {
        fail(error);
      }
    };
    if (loaded !== null) draw(loaded);
    else loadDrawing().then(draw, () => setFailure('its code could not be loaded'));
    return () => {
      gone = true;
      remove?.();
    };
  }, [build, inForce]);

  return (
    <div className={styles.chart}>
      <div
        ref={box}
        role="img"
        aria-label={label}
        aria-describedby={captionId}
        className={styles.box}
        style={{ minHeight: height_px }}
      />
      <p id={captionId} className="visuallyHidden">
        {description}
      </p>
      {failure !== null && (
        <p role="status">
          The picture could not be drawn ({failure}). The table below holds the same numbers.
        </p>
      )}
    </div>
  );
}
