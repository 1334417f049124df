import type { ReactNode } from 'react';
import type { UnitSeries } from '../../lib/analysis/types';
import { symbols } from '../../lib/charts/symbols';
import styles from './unit.module.css';

interface Entry {
  readonly label: string;
  readonly shown: boolean;
  readonly mark: ReactNode;
}

function entriesOf(series: UnitSeries): readonly Entry[] {
  const has = (stage: string) =>
    series.readings.some((reading) => reading.stage === stage && reading.lower_mm === null);
  return [
    {
      label: 'as found',
      shown: has('found'),
      mark: <path d={symbols.found} transform="translate(14 8) scale(4.5)" fill="var(--ink)" />,
    },
    {
      label: 'as left',
      shown: has('left'),
      mark: (
        <path
          d={symbols.left}
          transform="translate(14 8) scale(5)"
          fill="var(--paper)"
          stroke="var(--ink)"
          strokeWidth="0.3"
        />
      ),
    },
    {
      label: 'interval reading',
      shown: series.readings.some((reading) => reading.lower_mm !== null),
      mark: <path d="M14,1V15" stroke="var(--ink)" strokeWidth="3" />,
    },
    {
      label: 'sister-informed 80 % band of the level, median',
      shown: series.sisterBand.length > 0,
      mark: (
        <>
          <rect width="28" height="16" fill="var(--hue)" opacity="0.2" />
          <path d="M0,8H28" stroke="var(--hue)" strokeWidth="2" />
        </>
      ),
    },
    {
      label: 'own straight line, 80 % prediction interval',
      shown: series.ownLine.length > 0,
      mark: (
        <>
          <path d="M0,8H28" stroke="var(--ink)" />
          <path d="M0,2H28M0,14H28" stroke="var(--ink)" strokeDasharray="5 4" />
        </>
      ),
    },
    {
      label: 'limit',
      shown: series.margins.some((margin) => margin.limit_mm !== null),
      mark: <path d="M0,8H28" stroke="var(--limit)" strokeWidth="2.5" />,
    },
    {
      label: 'expected as found at the next overhaul, 10 to 90 %',
      shown:
        series.nextOverhaulUnitHours !== null &&
        series.margins.some((one) => one.expectedFoundMedian_mm !== null),
      mark: (
        <>
          <path d="M14,0V16" stroke="var(--hue)" strokeWidth="6" opacity="0.75" />
          <path d="M7,8H21" stroke="var(--hue)" strokeWidth="2" />
        </>
      ),
    },
    {
      label: 'reset',
      shown: series.resets.length > 0,
      mark: <path d="M14,0V16" stroke="var(--muted)" />,
    },
  ];
}

/** The key to the picture of a series; only what the picture holds. */
export function SeriesKey({ series }: { readonly series: UnitSeries }) {
  return (
    <ul className={styles.key} aria-label="Key">
      {entriesOf(series)
        .filter((entry) => entry.shown)
        .map((entry) => (
          <li key={entry.label}>
            <svg viewBox="0 0 28 16" aria-hidden="true">
              {entry.mark}
            </svg>
            {entry.label}
          </li>
        ))}
    </ul>
  );
}
