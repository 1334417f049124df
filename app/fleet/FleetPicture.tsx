'use client';

import { useRouter } from 'next/navigation';
import { useMemo } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { fleetWindow } from '../../lib/charts/fleetStripData';
import { unitAddress } from '../address/unitAddress';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/drawChart';
import { usePrinting } from '../frame/usePrinting';
import { counted } from '../words/counted';
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

function pickedUnit(datum: unknown): string | null {
  if (typeof datum !== 'object' || datum === null) return null;
  const value = 'unit' in datum ? datum.unit : 'value' in datum ? datum.value : null;
  return typeof value === 'string' ? value : null;
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
  const most = usePrinting() ? rowsPerPaperPicture : rowsPerPicture;
  const perPicture = Math.ceil(shown.length / Math.ceil(shown.length / most));
  const pictures = useMemo(
    () =>
      Array.from({ length: Math.ceil(shown.length / perPicture) }, (_, index) => {
        const strips = stripRows(shown.slice(index * perPicture, (index + 1) * perPicture));
        const build: BuildSpec = (theme, narrow) => fleetStrip(strips, window, theme, narrow);
        return { build, rows: strips.length, key: strips[0]?.unit ?? '' };
      }),
    [shown, perPicture, window],
  );
  const pick = (datum: unknown) => {
    const unit = pickedUnit(datum);
    if (unit !== null) router.push(unitAddress(unit, filter.series));
  };
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
      {pictures.map((picture) => (
        <Chart
          key={picture.key}
          build={picture.build}
          label={title}
          description={fleetSentence(rows, true)}
          height_px={picture.rows * 24 + 50}
          onPick={pick}
        />
      ))}
      {pages > 1 && (
        <div className="buttons">
          <button type="button" disabled={current === 1} onClick={() => onPage(current - 1)}>
            Previous {rowsPerPicture}
          </button>
          <span role="status">
            Rows {first + 1} to {first + shown.length} of {counted(rows.length, 'unit')}
          </span>
          <button type="button" disabled={current === pages} onClick={() => onPage(current + 1)}>
            Next {rowsPerPicture}
          </button>
        </div>
      )}
    </figure>
  );
}
