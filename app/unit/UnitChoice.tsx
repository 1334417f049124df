import Link from 'next/link';
import { useMemo } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { unitAddress } from '../address/unitAddress';
import { openingSentence } from '../engine/WithFleet';
import { chanceWords, everything, fleetRows } from '../fleet/fleetRows';
import { useFleetAhead } from '../fleet/useFleetAhead';

const offered = 12;

/** What the Unit page offers before a unit is chosen: those that can wait least. */
export function UnitChoice({ fleet }: { readonly fleet: FleetResult }) {
  const shown = useFleetAhead(fleet);
  const rows = useMemo(() => (shown === null ? null : fleetRows(shown, everything)), [shown]);
  if (rows === null) return <p role="status">{openingSentence}</p>;
  return (
    <>
      <p className="answer">Choose a unit. Those that can wait least are:</p>
      <ol>
        {rows.slice(0, offered).map((row) => (
          <li key={row.unit.unit}>
            <Link href={unitAddress(row.unit.unit)} prefetch={false}>
              {row.unit.unit}
            </Link>
            {row.decidingName === null ? ', no limit' : `, ${row.decidingName}`}
            {row.outlook.chanceAtNextOverhaul === null ? '' : `, ${chanceWords(row)} by its next overhaul`}
          </li>
        ))}
      </ol>
    </>
  );
}
