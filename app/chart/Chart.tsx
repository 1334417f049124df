'use client';

import { useId, useLayoutEffect, useRef } from 'react';
import { PictureExport } from '../export/PictureExport';
import styles from './chart.module.css';
import { PaperChart } from './PaperChart';
import { hintAt, pickedAt, placeSvg } from './placeSvg';
import { useChartTheme } from './useChartTheme';
import { type BuildSpec, useDrawing } from './useDrawing';
import { useWidth } from './useWidth';

interface ChartProps {
  /** Keep it stable: a new function draws the chart anew. */
  readonly build: BuildSpec;
  /** What the picture is. */
  readonly label: string;
  /** What it shows, in words, for those who do not see it; nothing else carries it. */
  readonly description: string;
  readonly height_px: number;
  /** A picture that was drawn before, shown until this one is drawn. */
  readonly until?: string | null;
  /** Called with the picture whenever it is drawn; keep it stable. */
  readonly onDrawn?: (svg: string) => void;
  /** Called with what a clicked mark stands for. */
  readonly onPick?: (picked: string) => void;
  /** What is printed in its place; one picture of the same specification if not given. */
  readonly onPaper?: readonly BuildSpec[];
}

/** A picture from a Vega-Lite specification, drawn in a worker without eval, with a copy for paper ready beside it. */
export function Chart({ build, label, description, height_px, until, onDrawn, onPick, onPaper }: ChartProps) {
  const box = useRef<HTMLDivElement>(null);
  const failure = useDrawing(box, build, useChartTheme(), useWidth(box), onDrawn);
  useLayoutEffect(() => {
    const { current } = box;
    if (until != null && current !== null && current.childElementCount === 0) placeSvg(current, until);
  }, [until]);
  const captionId = useId();
  return (
    <div className={styles.chart}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the table below holds the same links for the keyboard. */}
      <div
        ref={box}
        role="img"
        aria-label={label}
        aria-describedby={captionId}
        className={`${styles.box} ${styles.onScreen}`}
        style={{ minHeight: height_px }}
        onPointerMove={(event) => {
          event.currentTarget.title = hintAt(event.target) ?? '';
        }}
        onClick={(event) => {
          const picked = pickedAt(event.target);
          if (picked !== null) onPick?.(picked);
        }}
      />
      {(onPaper ?? [build]).map((paper, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the pictures have no other identity than their order.
        <PaperChart key={index} build={paper} label={label} />
      ))}
      <p id={captionId} className="visuallyHidden">
        {description}
      </p>
      <PictureExport build={build} title={label} description={description} />
      {failure !== null && (
        <p role="status">
          The picture could not be drawn ({failure}). The table below holds the same numbers.
        </p>
      )}
    </div>
  );
}
