'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useMemo, useRef } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { lighterSvg } from '../../lib/charts/lighterSvg';
import { unitAddress } from '../address/unitAddress';
import { Chart } from '../chart/Chart';
import { whenIdle } from '../engine/whenIdle';
import { Pager } from '../frame/Pager';
import { fleetRemarks } from '../words/fleetSentence';
import { useWrittenMemo } from '../writing/useWriting';
import { FleetFigure, fleetPictureTitle } from './FleetFigure';
import { everything, type FleetFilter, type FleetRow, fleetRows } from './fleetRows';
import { keepLastPicture, lastPictureSvg, sitePictureSvg } from './lastPicture';
import { pictureOf, pictureWindow, rowsPerPicture } from './pictureOf';

/** Few on paper: four pictures fit a page, and the first one fits what the words above it leave. */
const rowsPerPaperPicture = 7;

interface FleetPictureProps {
  readonly fleet: FleetResult;
  readonly rows: readonly FleetRow[];
  readonly filter: FleetFilter;
  /** What the picture shows, in words. */
  readonly description: string;
  readonly page: number;
  readonly onPage: (page: number) => void;
  /** Whether all rows are printed, and not only those shown. */
  readonly wholeOnPaper?: boolean;
}

/** One strip a unit, at most 60 to a picture; a click on a row opens its unit. */
export function FleetPicture(props: FleetPictureProps) {
  const { fleet, rows, filter, description, page, onPage, wholeOnPaper = false } = props;
  const router = useRouter();
  const pages = Math.ceil(rows.length / rowsPerPicture);
  const current = Number.isInteger(page) ? Math.min(Math.max(1, page), pages) : 1;
  const first = (current - 1) * rowsPerPicture;
  const shown = useMemo(() => rows.slice(first, first + rowsPerPicture), [rows, first]);
  const isEverything = rows.length === fleet.units.length && filter.series === '';
  const others = useMemo(() => (isEverything ? null : fleetRows(fleet, everything)), [fleet, isEverything]);
  const all = others ?? rows;
  const window = useMemo(() => pictureWindow(fleet, all), [fleet, all]);
  const { build, onPaper } = useWrittenMemo(() => {
    const printed = wholeOnPaper ? rows : shown;
    const perPaper = Math.ceil(printed.length / Math.ceil(printed.length / rowsPerPaperPicture));
    const papers = Array.from({ length: Math.ceil(printed.length / perPaper) }, (_, index) =>
      pictureOf(fleet, printed.slice(index * perPaper, (index + 1) * perPaper), window),
    );
    return { build: pictureOf(fleet, shown, window), onPaper: papers };
  }, [fleet, shown, rows, window, wholeOnPaper]);
  const isWhole = isEverything && current === 1 && !wholeOnPaper;
  const isOwn = fleet.source === 'own';
  const last = useMemo(
    () => (isWhole ? (isOwn ? lastPictureSvg() : sitePictureSvg()) : null),
    [isWhole, isOwn],
  );
  const callOff = useRef(() => {});
  const keep = useCallback(
    (svg: string) => {
      // Nobody waits for it, and the picture is still to be painted.
      callOff.current = whenIdle(() =>
        keepLastPicture({ sentence: description, remarks: fleetRemarks(rows), svg: lighterSvg(svg) }),
      );
    },
    [rows, description],
  );
  // A picture of data that are not open any more must not be kept.
  useEffect(() => () => callOff.current(), []);
  return (
    <FleetFigure>
      <Chart
        build={build}
        onPaper={onPaper}
        label={fleetPictureTitle}
        description={description}
        height_px={shown.length * 24 + 50}
        {...(isWhole ? { until: last } : {})}
        {...(isWhole && isOwn ? { onDrawn: keep } : {})}
        onPick={(unit) => router.push(unitAddress(unit, filter.series))}
      />
      <Pager
        first={first}
        shown={shown.length}
        total={rows.length}
        step={rowsPerPicture}
        noun="unit"
        onPage={(next) => onPage(next + 1)}
      />
    </FleetFigure>
  );
}
