'use client';

import Link from 'next/link';
import { isGroupBy } from '../../lib/analysis/grouping/sisterGroupOf';
import type { SistersResult } from '../../lib/analysis/sisters/types';
import type { FleetResult } from '../../lib/analysis/types';
import { useQuery } from '../address/useQuery';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { WithFleet } from '../engine/WithFleet';
import { Prose } from '../frame/Prose';
import { midSentence, seriesName } from '../words/seriesName';
import { findings } from '../words/sisterFindings';
import { sistersSentence } from '../words/sistersSentence';
import { Differences } from './Differences';
import { GaugePanel } from './GaugePanel';
import { GroupPanel } from './GroupPanel';
import { OtherSeries } from './OtherSeries';
import { SisterControls } from './SisterControls';

interface SistersContentProps {
  readonly fleet: FleetResult;
  readonly result: SistersResult;
  readonly query: URLSearchParams;
  readonly change: (changes: Readonly<Record<string, string>>) => void;
}

/** The series in the address, else that of the furthest finding, else the first that can be compared, else the first. */
function chosenSeries({ groups }: SistersResult, asked: string): string {
  const known = groups.some(({ series }) => series === asked);
  return known
    ? asked
    : ((findings(groups, 'rate')[0] ?? groups.find(({ reason }) => reason === null) ?? groups[0])?.series ??
        '');
}

function SistersContent({ fleet, result, query, change }: SistersContentProps) {
  const series = chosenSeries(result, query.get('series') ?? '');
  const groups = result.groups.filter((group) => group.series === series);
  const chosen = groups.find(({ group }) => group === query.get('in'));
  const measure = query.get('of') === 'start' ? 'start' : 'rate';
  const { characteristics } = fleet;
  const shown = chosen === undefined ? groups : [chosen];
  return (
    <>
      <p className="answer">
        <Prose text={sistersSentence({ ...result, groups: shown }, series, measure, characteristics)} />
      </p>
      <OtherSeries
        result={result}
        series={series}
        measure={measure}
        characteristics={characteristics}
        onSeries={change}
      />
      <SisterControls
        result={result}
        series={series}
        group={chosen?.group ?? ''}
        measure={measure}
        characteristics={characteristics}
        onChange={change}
      />
      {shown.map((group) => (
        <GroupPanel key={group.group} group={group} measure={measure} characteristics={characteristics} />
      ))}
      <Differences fleet={fleet} groupBy={result.groupBy} series={series} />
      <GaugePanel fleet={fleet} series={series} name={midSentence(seriesName(series, characteristics))} />
    </>
  );
}

function SistersAnswer({ fleet }: { readonly fleet: FleetResult }) {
  const [query, change] = useQuery();
  const asked = query.get('by') ?? '';
  const answer = useAsked(fleet, 'sisters', isGroupBy(asked) ? asked : 'frame');
  return (
    <WithAnswer asked={answer}>
      {(result, computing) => (
        <div aria-busy={computing}>
          {computing && <p role="status">The units are being put together anew; this is the last answer.</p>}
          {result.groups.length === 0 ? (
            <p className="answer">No reading of the open data can be used, so no unit can be compared.</p>
          ) : (
            <SistersContent fleet={fleet} result={result} query={query} change={change} />
          )}
          <p className="screenOnly">
            <Link href="/methods/#sisters">How this was computed</Link>
          </p>
        </div>
      )}
    </WithAnswer>
  );
}

/** The Sisters page: the answer in words, each group's units and funnel, differences between sites, duties and workshops. */
export function SistersPage() {
  return <WithFleet>{(fleet) => <SistersAnswer fleet={fleet} />}</WithFleet>;
}
