'use client';

import Link from 'next/link';
import { Suspense, useMemo } from 'react';
import { isWholeFleet } from '../../lib/analysis/scope';
import type { FleetResult } from '../../lib/analysis/types';
import { useQuery } from '../address/useQuery';
import { FleetAdvice } from '../decisions/FleetAdvice';
import { WithFleet } from '../engine/WithFleet';
import { Prose } from '../frame/Prose';
import { WaitingQuestions } from '../records/WaitingQuestions';
import { fleetRemarks, fleetSentence } from '../words/fleetSentence';
import { FirstView } from './FirstView';
import { FleetFilters } from './FleetFilters';
import { FleetPicture } from './FleetPicture';
import { FleetTable } from './FleetTable';
import { type FleetFilter, fleetRows } from './fleetRows';
import { scopeOf } from './scopeAddress';
import { useFleetAhead } from './useFleetAhead';

function FleetContent({ fleet }: { readonly fleet: FleetResult }) {
  const [query, change] = useQuery();
  const filter = useMemo<FleetFilter>(
    () => ({ ...scopeOf(query), series: query.get('series') ?? '' }),
    [query],
  );
  const rows = useMemo(() => fleetRows(fleet, filter), [fleet, filter]);
  const listed = useMemo(() => new Set(rows.map(({ unit }) => unit.unit)), [rows]);
  const filtered = !isWholeFleet(filter) || filter.series !== '';
  return (
    <>
      <p className="answer">
        <Prose text={fleetSentence(rows, filtered)} />
      </p>
      <WaitingQuestions questions={fleet.questions} />
      <ul className="remarks">
        {fleetRemarks(rows).map((remark) => (
          <li key={remark}>
            <Prose text={remark} />
          </li>
        ))}
      </ul>
      <FleetFilters fleet={fleet} filter={filter} onChange={change} />
      {rows.length > 0 && (
        <>
          <FleetPicture
            fleet={fleet}
            rows={rows}
            filter={filter}
            page={Number(query.get('page') ?? '1')}
            onPage={(page) => change({ page: page === 1 ? '' : String(page) })}
          />
          <FleetTable
            rows={rows}
            filter={filter}
            sort={query.get('sort') ?? ''}
            onSort={(sort) => change({ sort })}
          />
        </>
      )}
      {rows.length > 0 && <FleetAdvice fleet={fleet} units={listed} query={query} onChange={change} />}
      <p className="screenOnly">
        <Link href="/methods/#chance-of-a-unit">How this was computed</Link>
      </p>
    </>
  );
}

function FleetWithRows({ fleet }: { readonly fleet: FleetResult }) {
  const shown = useFleetAhead(fleet);
  if (shown === null) return <FirstView />;
  return (
    <Suspense>
      <FleetContent fleet={shown} />
    </Suspense>
  );
}

/**
 * The Fleet page: the answer in words, the picture, the table. What reads the address may suspend; the first view stands outside of that,
 * since a page's text puts such a part behind everything else.
 */
export function FleetPage() {
  return <WithFleet until={<FirstView />}>{(fleet) => <FleetWithRows fleet={fleet} />}</WithFleet>;
}
