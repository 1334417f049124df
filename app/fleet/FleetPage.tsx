'use client';

import Link from 'next/link';
import { Suspense, useMemo } from 'react';
import { isWholeFleet } from '../../lib/analysis/scope';
import type { FleetResult } from '../../lib/analysis/types';
import { useQuery } from '../address/useQuery';
import { FleetAdvice } from '../decisions/FleetAdvice';
import { WithFleet } from '../engine/WithFleet';
import { Later } from '../frame/Later';
import { Prose } from '../frame/Prose';
import { WaitingQuestions } from '../records/WaitingQuestions';
import { fleetRemarks, fleetSentence } from '../words/fleetSentence';
import { useWrittenMemo } from '../writing/useWriting';
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
  const sentence = useWrittenMemo(() => fleetSentence(rows, filtered), [rows, filtered]);
  const remarks = useWrittenMemo(() => fleetRemarks(rows), [rows]);
  return (
    <>
      <p className="answer">
        <Prose text={sentence} />
      </p>
      <WaitingQuestions questions={fleet.questions} />
      <ul className="remarks">
        {remarks.map((remark) => (
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
            description={sentence}
            page={Number(query.get('page') ?? '1')}
            onPage={(page) => change({ page: page === 1 ? '' : String(page) })}
          />
          <Later after={rows.length}>
            <FleetTable
              rows={rows}
              filter={filter}
              sort={query.get('sort') ?? ''}
              onSort={(sort) => change({ sort })}
            />
            <FleetAdvice fleet={fleet} units={listed} query={query} onChange={change} />
          </Later>
        </>
      )}
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
