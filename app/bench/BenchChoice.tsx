import Link from 'next/link';
import type { FleetResult } from '../../lib/analysis/types';
import { formatDate } from '../../lib/charts/format';
import { benchAddress } from '../address/benchAddress';

const offered = 12;

/** What the Bench page offers before a unit is chosen: those whose next overhaul comes first. */
export function BenchChoice({ fleet }: { readonly fleet: FleetResult }) {
  const planned = fleet.units
    .filter(({ nextOverhaulDate }) => nextOverhaulDate !== null)
    .sort((a, b) => ((a.nextOverhaulDate ?? '') < (b.nextOverhaulDate ?? '') ? -1 : 1))
    .slice(0, offered);
  return (
    <>
      <p className="answer">
        {planned.length === 0
          ? 'Choose a unit; no overhaul is planned.'
          : 'Choose a unit. The next overhauls are planned for:'}
      </p>
      <ol>
        {planned.map(({ unit, site, engine, nextOverhaulDate }) => (
          <li key={unit}>
            <Link href={benchAddress(unit)} prefetch={false}>
              {unit}
            </Link>
            , {[formatDate(nextOverhaulDate), site, engine].filter((part) => part !== null).join(', ')}
          </li>
        ))}
      </ol>
    </>
  );
}
