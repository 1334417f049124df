'use client';

import type { FleetResult } from '../../lib/analysis/types';
import { useEngine } from '../engine/EngineProvider';
import { isOfLastTime } from '../engine/engineState';
import { useFleetAhead } from './useFleetAhead';

function Ahead({ fleet }: { readonly fleet: FleetResult }) {
  useFleetAhead(fleet);
  return null;
}

/** Has the rows of a large fleet made as soon as it is open, whatever page is shown: most readers go to the Fleet page next. */
export function RowsReady() {
  const { state } = useEngine();
  return state.fleet === null || isOfLastTime(state) ? null : <Ahead fleet={state.fleet} />;
}
