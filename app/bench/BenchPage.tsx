'use client';

import { useEffect, useState } from 'react';
import type { BenchSheet } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { useQuery } from '../address/useQuery';
import { NotComputed } from '../engine/NotComputed';
import { useAsked } from '../engine/useAsked';
import { WithFleet } from '../engine/WithFleet';
import { UnitTitle } from '../unit/UnitTitle';
import { BenchChoice } from './BenchChoice';
import { BenchView } from './BenchView';
import { useEntry } from './useEntry';

function BenchContent({ fleet, id }: { readonly fleet: FleetResult; readonly id: string }) {
  const typed = useEntry(fleet.source, id);
  const { entry } = typed;
  const asked = useAsked(fleet, 'benchSheet', id, entry?.unitHours ?? '', entry?.date ?? '');
  const answer = asked.status === 'answered' ? asked.answer : null;
  const [last, setLast] = useState<BenchSheet | null>(null);
  useEffect(() => {
    if (answer !== null) setLast(answer);
  }, [answer]);
  if (asked.status === 'failed') return <NotComputed {...asked} />;
  // The sheet stays while an overhaul that was saved is read: what was typed, and what was said of it, is in sight.
  const sheet = asked.status === 'answered' ? asked.answer : (asked.before ?? last);
  if (asked.status === 'answered' && sheet === null) {
    return <p role="alert">The open data hold no unit named ‘{id}’. Check the name, or choose one above.</p>;
  }
  if (sheet === null || entry === null) return <p role="status">Making the sheet of {id}.</p>;
  return <BenchView fleet={fleet} sheet={sheet} typed={{ ...typed, entry }} />;
}

/** The Bench page: the sheet of one unit's next overhaul, and the check of its readings as they are typed; the unit is in the address. */
export function BenchPage() {
  const [query, change] = useQuery();
  const id = query.get('id') ?? '';
  return (
    <>
      <UnitTitle
        page="Bench"
        heading={`Bench sheet of ${id}`}
        id={id}
        onPick={(unit) => change({ id: unit })}
      />
      <WithFleet>
        {(fleet) =>
          id === '' ? <BenchChoice fleet={fleet} /> : <BenchContent key={id} fleet={fleet} id={id} />
        }
      </WithFleet>
    </>
  );
}
