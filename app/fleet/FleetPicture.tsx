'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useMemo } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { fleetWindow } from '../../lib/charts/fleetStripData';
import { unitAddress } from '../address/unitAddress';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { Pager } from '../frame/Pager';
import { fleetSentence } from '../words/fleetSentence';
import { useWrittenMemo } from '../writing/useWriting';
import { ChanceKey } from './ChanceKey';
import { everything, type FleetFilter, type FleetRow, fleetRows } from './fleetRows';
import { keepLastPicture, lastPicture } from './lastPicture';
import { hasDates, stripRows } from './stripRows';

/** What the picture is of. */
export const fleetPictureTitle = 'Chance that the first limit is met, by date';

const rowsPerPicture = 60;
/** Fewer on paper, so that a picture fits its page. */
const rowsPerPaperPicture = 25;

interface FleetPictureProps {
  readonly fleet: FleetResult;
  readonly rows: readonly FleetRow[];
  readonly filter: FleetFilter;
  readonly page: number;
  readonly onPage: (page: number) => void;
  /** Whether all rows are printed, and not only those shown. */
  readonly wholeOnPaper?: boolean;
}

/** One strip a unit, at most 60 to a picture; a click on a row opens its unit. */
export function FleetPicture({ fleet, rows, filter, page, onPage, wholeOnPaper = false }: FleetPictureProps) {
  const router = useRouter();
  const pages = Math.ceil(rows.length / rowsPerPicture);
  const current = Number.isInteger(page) ? Math.min(Math.max(1, page), pages) : 1;
  const first = (current - 1) * rowsPerPicture;
  const shown = useMemo(() => rows.slice(first, first + rowsPerPicture), [rows, first]);
  const isEverything = rows.length === fleet.units.length && filter.series === '';
  const others = useMemo(() => (isEverything ? null : fleetRows(fleet, everything)), [fleet, isEverything]);
  const all = others ?? rows;
  const window = useMemo(() => {
    const plans = all.flatMap(({ unit }) => unit.plannedOverhauls.slice(-1));
    return fleetWindow(fleet.asOf, all.some(hasDates) ? fleet.quarters : [], plans);
  }, [fleet, all]);
  const { build, onPaper } = useWrittenMemo(() => {
    const buildOf =
      (part: ReturnType<typeof stripRows>): BuildSpec =>
      (theme, narrow) =>
        fleetStrip(part, window, theme, narrow);
    const printed = stripRows(wholeOnPaper ? rows : shown, fleet);
    const perPaper = Math.ceil(printed.length / Math.ceil(printed.length / rowsPerPaperPicture));
    const papers = Array.from({ length: Math.ceil(printed.length / perPaper) }, (_, index) =>
      buildOf(printed.slice(index * perPaper, (index + 1) * perPaper)),
    );
    return { build: buildOf(stripRows(shown, fleet)), onPaper: papers };
  }, [fleet, shown, rows, window, wholeOnPaper]);
  const sentence = fleetSentence(rows, false);
  const isWhole = isEverything && current === 1 && fleet.source === 'own' && !wholeOnPaper;
  const last = useMemo(() => (isWhole ? lastPicture() : null), [isWhole]);
  const keep = useCallback((svg: string) => keepLastPicture({ sentence, svg }), [sentence]);
  return (
    <figure>
      <figcaption>
        <h2>{fleetPictureTitle}</h2>
        <p>
          One row a unit, what cannot wait first; a click opens the unit. The stronger the ink, the higher the
          chance that its first limit has been met by then, if nothing is renewed. At the right: the chance at
          the next planned overhaul, and the series that decides.
        </p>
        <ChanceKey />
      </figcaption>
      <Chart
        build={build}
        onPaper={onPaper}
        label={fleetPictureTitle}
        description={fleetSentence(rows, true)}
        height_px={shown.length * 24 + 50}
        {...(isWhole ? { until: last?.svg ?? null, onDrawn: keep } : {})}
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
    </figure>
  );
}
