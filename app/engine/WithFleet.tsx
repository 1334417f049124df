'use client';

import type { ReactNode } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { useEngine } from './EngineProvider';

interface WithFleetProps {
  readonly children: (fleet: FleetResult) => ReactNode;
  /** Shown while the data are being opened. */
  readonly until?: ReactNode;
}

/** Content that needs open data; until there are any it says so in a line. */
export function WithFleet({ children, until }: WithFleetProps) {
  const { fleet, work } = useEngine().state;
  if (fleet !== null) return children(fleet);
  if (work !== null && until !== undefined) return until;
  return <p>{work === null ? 'No data are open.' : 'The data are being opened; the answer follows here.'}</p>;
}
