'use client';

import Link from 'next/link';
import type { ReactNode } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { siteFleetName } from '../words/siteFleet';
import { useEngine } from './EngineProvider';

interface WithFleetProps {
  readonly children: (fleet: FleetResult) => ReactNode;
  /** Shown while the data are being opened. */
  readonly until?: ReactNode;
}

/** Stands for an answer whose data are being opened. */
export const openingSentence = 'The data are being opened; the answer follows here.';

/** Content that needs open data; until there are any it says so in a line. */
export function WithFleet({ children, until }: WithFleetProps) {
  const { fleet, work } = useEngine().state;
  if (fleet !== null) return children(fleet);
  if (work === null)
    return (
      <p>
        No data are open, so this page has nothing to show yet. Try again or open the {siteFleetName()} above,
        or add your own files on the <Link href="/records/">Records page</Link>.
      </p>
    );
  return until ?? <p>{openingSentence}</p>;
}
