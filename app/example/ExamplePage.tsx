'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { defaultDecisionSettings } from '../../lib/analysis/decisions/defaultDecisionSettings';
import { defaultSparesSettings } from '../../lib/analysis/demand/defaultSparesSettings';
import type { Spares } from '../../lib/analysis/demand/types';
import type { FleetResult } from '../../lib/analysis/types';
import { unitAddress } from '../address/unitAddress';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { WithFleet } from '../engine/WithFleet';
import { everything, fleetRows } from '../fleet/fleetRows';
import { Cautions } from '../frame/Cautions';
import { chosenExample, type Example } from './chosenExample';
import { ExampleSteps } from './ExampleSteps';

interface FollowedProps {
  readonly fleet: FleetResult;
  readonly spares: Spares;
  readonly example: Example;
}

function Followed({ fleet, spares, example }: FollowedProps) {
  const { unit } = example.row.unit;
  const asked = useAsked(fleet, 'unit', unit);
  return (
    <>
      <p className="answer">
        {example.order === null
          ? `${unit} is followed from its readings as far as its records go: no unit of the open fleet needs a part on account of a limit that has to be ordered.`
          : `${unit} is followed from its readings to the order of ${example.order.part}: it is the first in Fleet’s order whose next overhaul needs a part, on account of a limit, that has to be ordered.`}
      </p>
      <WithAnswer asked={asked}>
        {(result) =>
          result === null ? (
            <p role="alert">The open data hold no unit named ‘{unit}’: reload the page.</p>
          ) : (
            <ExampleSteps fleet={fleet} spares={spares} example={example} result={result} />
          )
        }
      </WithAnswer>
      <p className="screenOnly">
        <Link href={unitAddress(unit, example.series)}>{unit} on its own page</Link>.{' '}
        <Link href="/spares/">All orders</Link>.
      </p>
      <Cautions />
    </>
  );
}

function ExampleContent({ fleet }: { readonly fleet: FleetResult }) {
  const rows = useMemo(() => fleetRows(fleet, everything), [fleet]);
  const decisions = useAsked(fleet, 'decisions', defaultDecisionSettings);
  const spares = useAsked(fleet, 'spares', defaultSparesSettings);
  if (rows.length === 0)
    return (
      <p>
        What is lacking: a unit. Add overhaul records on the <Link href="/records/">Records page</Link>.
      </p>
    );
  return (
    <WithAnswer asked={decisions}>
      {(decided) => (
        <WithAnswer asked={spares}>
          {(ordered) => {
            const example = chosenExample(rows, decided, ordered.orders);
            return example === null ? null : <Followed fleet={fleet} spares={ordered} example={example} />;
          }}
        </WithAnswer>
      )}
    </WithAnswer>
  );
}

/** The example: how a number of a file becomes an order, with the numbers of the open fleet. */
export function ExamplePage() {
  return <WithFleet>{(fleet) => <ExampleContent fleet={fleet} />}</WithFleet>;
}
