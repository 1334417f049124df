import { startTransition, useEffect, useState } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { hasRows, wholeFleetInSteps } from './fleetRows';

/** Up to so many units the rows take less time than a page needs to be drawn. */
const fewUnits = 2_000;

const isReady = (fleet: FleetResult) => fleet.units.length <= fewUnits || hasRows(fleet);

/**
 * The fleet as soon as its rows are at hand, and until then the one before it, or null: of thousands of units they are made in
 * short steps, between which the page answers.
 */
export function useFleetAhead(fleet: FleetResult): FleetResult | null {
  const [shown, setShown] = useState<FleetResult | null>(null);
  useEffect(() => {
    const steps = isReady(fleet) ? null : wholeFleetInSteps(fleet);
    let timer: ReturnType<typeof setTimeout> | undefined;
    const step = () => {
      // The page is drawn from them in slices, too.
      if (steps === null || steps.next().done) startTransition(() => setShown(fleet));
      else timer = setTimeout(step);
    };
    step();
    return () => clearTimeout(timer);
  }, [fleet]);
  return isReady(fleet) ? fleet : shown;
}
