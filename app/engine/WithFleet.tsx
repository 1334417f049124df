'use client';

import type { ReactNode } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { useEngine } from './EngineProvider';

/** Content that needs open data; until there are any it says so in a line. */
export function WithFleet({ children }: { readonly children: (fleet: FleetResult) => ReactNode }) {
  const { fleet, work } = useEngine().state;
  if (fleet !== null) return children(fleet);
  return <p>{work === null ? 'No data are open.' : 'The data are being opened; the answer follows here.'}</p>;
}
