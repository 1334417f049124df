'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import type { DriftResult } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { rewritten } from '../../lib/charts/rewritten';
import { useQuery } from '../address/useQuery';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { WithFleet } from '../engine/WithFleet';
import { Prose } from '../frame/Prose';
import { budgetSentence, driftSentence } from '../words/driftSentence';
import { capitalised, midSentence, seriesName } from '../words/seriesName';
import { DriftControls } from './DriftControls';
import { driftSettings } from './driftAddress';
import { Findings } from './Findings';
import { Multiples } from './Multiples';
import { UnitDrift, unitChartsId } from './UnitDrift';
import { useAcknowledgements } from './useAcknowledgements';
import { Workshops } from './Workshops';

interface DriftContentProps {
  readonly fleet: FleetResult;
  readonly result: DriftResult;
  readonly query: URLSearchParams;
  readonly change: (changes: Readonly<Record<string, string>>) => void;
}

function DriftContent({ fleet, result, query, change }: DriftContentProps) {
  const { characteristics } = fleet;
  const acknowledged = useAcknowledgements(result.source);
  const open = result.findings.filter((finding) => acknowledged.of(finding) === null);
  const known = useMemo(() => [...new Set(fleet.fits.map((fit) => fit.series))], [fleet]);
  const asked = query.get('series') ?? '';
  const first = open[0] ?? result.findings[0];
  const series = known.includes(asked) ? asked : (first?.series ?? known[0] ?? '');
  const unit = query.get('unit') ?? (first?.series === series ? first.unit : '');
  const pick = (name: string) => change({ unit: name, series });
  return (
    <>
      <p className="answer">
        <Prose text={driftSentence(result, open, characteristics)} />
      </p>
      <p>{result.readings > 0 && budgetSentence(result)}</p>
      <Findings
        result={result}
        acknowledged={acknowledged}
        characteristics={characteristics}
        onShow={(finding) => {
          change({ unit: finding.unit, series: finding.series });
          document.getElementById(unitChartsId)?.focus();
        }}
      />
      <DriftControls
        result={result}
        series={series}
        known={known}
        characteristics={characteristics}
        onChange={change}
      />
      <Multiples fleet={fleet} result={result} series={series} onPick={pick} />
      <UnitDrift
        fleet={fleet}
        settings={result.settings}
        series={series}
        unit={unit}
        query={query}
        onChange={change}
      />
      <Workshops fleet={fleet} series={series} />
      {result.uncharted.length > 0 && (
        <section aria-label="Series without a forecast">
          <h2>Series without a forecast</h2>
          <ul>
            {result.uncharted.map(({ group, series: name, reason }) => (
              <li key={`${group} ${name}`}>
                {capitalised(group)}, {midSentence(seriesName(name, fleet.characteristics))}:{' '}
                {rewritten(reason)}.
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function DriftAnswer({ fleet }: { readonly fleet: FleetResult }) {
  const [query, change] = useQuery();
  const settings = useMemo(() => driftSettings(query), [query]);
  const asked = useAsked(fleet, 'drift', settings);
  return (
    <WithAnswer asked={asked}>
      {(result, computing) => (
        <div aria-busy={computing}>
          <DriftContent fleet={fleet} result={result} query={query} change={change} />
          <p className="screenOnly">
            <Link href="/methods/#charts">How this was computed</Link>
          </p>
        </div>
      )}
    </WithAnswer>
  );
}

/** The Drift page: signals first, then all units of a series, one unit large, and what workshops leave. */
export function DriftPage() {
  return <WithFleet>{(fleet) => <DriftAnswer fleet={fleet} />}</WithFleet>;
}
