'use client';

import { useCallback, useLayoutEffect, useRef, useState } from 'react';
import type { DrawnPicture } from '../../lib/charts/drawSvg';
import type { PlotPlace } from '../../lib/charts/placeInPlot';
import type { Plot } from '../../lib/charts/plotOf';
import { PictureExport } from '../export/PictureExport';
import { Crosshair, usePointed } from './Crosshair';
import styles from './chart.module.css';
import { PaperChart } from './PaperChart';
import { PointReader } from './PointReader';
import { countPoints } from './picturePoints';
import { hintAt, pickedAt, placeSvg } from './placeSvg';
import { useChartTheme } from './useChartTheme';
import { type BuildSpec, useDrawing } from './useDrawing';
import { useWidth } from './useWidth';

interface ChartProps {
  /** Keep it stable: a new function draws the chart anew. */
  readonly build: BuildSpec;
  /** What the picture is. */
  readonly label: string;
  /** What it shows, in words, for those who do not see it: read once, behind the label. */
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
  /** What the picture holds at a place, by the values of its axes: a crosshair then follows the pointer, with these words. */
  readonly wordsAt?: (place: PlotPlace) => string;
}

interface Drawn {
  /** How often it was drawn. */
  readonly number: number;
  readonly points: number;
  readonly plot: Plot | null;
}

const notDrawn: Drawn = { number: 0, points: 0, plot: null };

/** A picture from a Vega-Lite specification, drawn in a worker without eval, with a copy for paper ready beside it. */
export function Chart(props: ChartProps) {
  const { build, label, description, height_px, until, onDrawn, onPick, onPaper, wordsAt } = props;
  const box = useRef<HTMLDivElement>(null);
  const [drawn, setDrawn] = useState(notDrawn);
  const take = useCallback(
    ({ svg, plot }: DrawnPicture) => {
      const points = box.current === null ? 0 : countPoints(box.current);
      setDrawn(({ number }) => ({ number: number + 1, points, plot }));
      onDrawn?.(svg);
    },
    [onDrawn],
  );
  const failure = useDrawing(box, build, useChartTheme(), useWidth(box), take);
  const [pointed, follow] = usePointed(box, wordsAt === undefined ? null : drawn.plot);
  useLayoutEffect(() => {
    const { current } = box;
    if (until != null && current !== null && current.childElementCount === 0) placeSvg(current, until);
  }, [until]);
  return (
    <div className={styles.chart}>
      {failure !== null && (
        <div role="status">
          <p>The picture could not be drawn ({failure.message}). The table below holds the same numbers.</p>
          <p className="buttons">
            <button type="button" onClick={failure.tryAgain}>
              Draw it again
            </button>
          </p>
        </div>
      )}
      <div className={`${styles.frame} ${styles.onScreen}`}>
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: the points are gone through by keyboard in PointReader. */}
        <div
          ref={box}
          role="img"
          // What it is and what it finds in one name: not every reader is told of a description beside it.
          aria-label={`${label}. ${description}`}
          className={styles.box}
          // Where nothing could be drawn no room is kept for it.
          style={{ minHeight: failure !== null && drawn.number === 0 ? 0 : height_px }}
          onPointerMove={(event) => {
            event.currentTarget.title = hintAt(event.target) ?? '';
            follow(event);
          }}
          onPointerLeave={() => follow(null)}
          onClick={(event) => {
            const picked = pickedAt(event.target);
            if (picked !== null) onPick?.(picked);
          }}
        />
        {drawn.points > 0 && (
          <PointReader box={box} label={label} count={drawn.points} drawing={drawn.number} onPick={onPick} />
        )}
        {pointed !== null && drawn.plot !== null && <Crosshair pointed={pointed} plot={drawn.plot} />}
      </div>
      {wordsAt !== undefined && (
        // Its line is there before there is anything to say: nothing moves under the pointer.
        <p className={styles.at} aria-hidden="true">
          {pointed === null ? 'Values under the pointer stand here.' : wordsAt(pointed.place)}
        </p>
      )}
      {(onPaper ?? [build]).map((paper, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the pictures have no other identity than their order.
        <PaperChart key={index} build={paper} label={label} />
      ))}
      <PictureExport build={build} title={label} description={description} />
    </div>
  );
}
