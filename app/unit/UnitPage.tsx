'use client';

import Link from 'next/link';
import type { FleetResult } from '../../lib/analysis/types';
import { useQuery } from '../address/useQuery';
import { NotComputed } from '../engine/NotComputed';
import { useAsked } from '../engine/useAsked';
import { WithFleet } from '../engine/WithFleet';
import { UnitChoice } from './UnitChoice';
import { UnitTitle } from './UnitTitle';
import { UnitView } from './UnitView';

interface UnitContentProps {
  readonly fleet: FleetResult;
  readonly id: string;
  readonly series: string;
  readonly onSeries: (series: string) => void;
}

function UnknownUnit({ id }: { readonly id: string }) {
  return (
    <p role="alert">
      The open data hold no unit named ‘{id}’. Check the name, or choose one above or on the{' '}
      <Link href="/">Fleet page</Link>.
    </p>
  );
}

function UnitContent({ fleet, id, series, onSeries }: UnitContentProps) {
  const asked = useAsked(fleet, 'unit', id);
  if (asked.status === 'waiting') return <p role="status">Reading the records of {id}.</p>;
  if (asked.status === 'failed') return <NotComputed {...asked} />;
  if (asked.answer === null) return <UnknownUnit id={id} />;
  return <UnitView result={asked.answer} fleet={fleet} series={series} onSeries={onSeries} />;
}

/** The Unit page: which unit and series is in the address. */
export function UnitPage() {
  const [query, change] = useQuery();
  const id = query.get('id') ?? '';
  return (
    <>
      <UnitTitle page="Unit" heading={`Unit ${id}`} id={id} onPick={(unit) => change({ id: unit })} />
      <WithFleet>
        {(fleet) =>
          id === '' ? (
            <UnitChoice fleet={fleet} />
          ) : (
            <UnitContent
              fleet={fleet}
              id={id}
              series={query.get('series') ?? ''}
              onSeries={(series) => change({ series })}
            />
          )
        }
      </WithFleet>
    </>
  );
}
