'use client';

import { useRouter } from 'next/navigation';
import { useMemo } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { fleetWindow } from '../../lib/charts/fleetStripData';
import { unitAddress } from '../address/unitAddress';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { Pager } from '../frame/Pager';
import { fleetSentence } from '../words/fleetSentence';
import { ChanceKey } from './ChanceKey';
import { type FleetFilter, type FleetRow, fleetRows } from './fleetRows';
import { stripRows } from './stripRows';

const rowsPerPicture = 60;
/** Fewer on paper, so that a picture fits its page. */
const rowsPerPaperPicture = 25;

interface FleetPictureProps {
  readonly fleet: FleetResult;
  readonly rows: readonly FleetRow[];
  readonly filter: FleetFilter;
  readonly page: number;
  readonly onPage: (page: number) => void;
}

/** One strip a unit, at most 60 to a picture; a click on a row opens its unit. */
export function FleetPicture({ fleet, rows, filter, page, onPage }: FleetPictureProps) {
  const router = useRouter();
  const pages = Math.ceil(rows.length / rowsPerPicture);
  const current = Number.isInteger(page) ? Math.min(Math.max(1, page), pages) : 1;
  const first = (current - 1) * rowsPerPicture;
  const shown = useMemo(() => rows.slice(first, first + rowsPerPicture), [rows, first]);
  const window = useMemo(() => {
    const all = fleetRows(fleet, { site: '', frame: '', engine: '', series: '' });
    return fleetWindow(fleet.asOf, stripRows(all));
  }, [fleet]);
  const { build, onPaper } = useMemo(() => {
    const strips = stripRows(shown);
    const buildOf =
      (part: typeof strips): BuildSpec =>
      (theme, narrow) =>
        fleetStrip(part, window, theme, narrow);
    const perPaper = Math.ceil(strips.length / Math.ceil(strips.length / rowsPerPaperPicture));
    const papers = Array.from({ length: Math.ceil(strips.length / perPaper) }, (_, index) =>
      buildOf(strips.slice(index * perPaper, (index + 1) * perPaper)),
    );
    return { build: buildOf(strips), onPaper: papers };
  }, [shown, window]);
  const title = 'Chance that the first limit is met, by date';
  return (
    <figure>
      <figcaption>
        <h2>{title}</h2>
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
        label={title}
        description={fleetSentence(rows, true)}
        height_px={shown.length * 24 + 50}
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
