'use client';

import { useMemo } from 'react';
import type { IntervalCosts, IntervalPoint } from '../../lib/analysis/demand/intervalCurve';
import { formatChance, formatHours } from '../../lib/charts/format';
import { intervalPicture } from '../../lib/charts/intervalPicture';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { moneyWords } from '../words/sparesSentence';
import { IntervalCostFields } from './IntervalCostFields';
import type { PlanPanelProps } from './PlanPanelProps';

/** Costs from the address; null unless all three are given. */
function costsOf(query: URLSearchParams): IntervalCosts | null {
  const [overhaul, exceedance] = [Number(query.get('costo') ?? ''), Number(query.get('coste') ?? '')];
  const currency = (query.get('currency') ?? '').trim();
  const given = overhaul > 0 && exceedance > 0 && currency !== '';
  return given ? { overhaul, exceedance, currency } : null;
}

function columnsOf(currency: string | null): readonly DataColumn<IntervalPoint>[] {
  return [
    { id: 'group', header: 'Group', rowHeader: true, value: ({ group }) => group },
    {
      id: 'interval',
      header: 'Interval',
      numeric: true,
      value: ({ interval_h }) => interval_h,
      cell: ({ interval_h }) => formatHours(interval_h),
    },
    {
      id: 'chance',
      header: 'Chance of passing a limit',
      numeric: true,
      value: ({ chance }) => chance,
      cell: ({ chance }) => formatChance(chance),
    },
    {
      id: 'overhauls',
      header: 'Overhauls a year',
      numeric: true,
      value: ({ overhaulsAYear }) => overhaulsAYear,
      cell: ({ overhaulsAYear }) => overhaulsAYear.toFixed(1),
    },
    {
      id: 'cost',
      header: 'Cost a year',
      numeric: true,
      value: ({ costAYear }) => costAYear,
      cell: ({ costAYear }) => (
        <Written
          text={moneyWords(costAYear, currency)}
          reason={currency === null ? 'no costs are given' : 'a part has no price in that currency'}
        />
      ),
    },
  ];
}

/** Chance of passing a limit in service, and overhauls and cost a year, against the interval between overhauls. */
export function IntervalCurve({ fleet, settings, query, onChange }: PlanPanelProps) {
  const costs = useMemo(() => costsOf(query), [query]);
  const asked = useAsked(fleet, 'intervalCurve', settings.acceptedRisk, costs);
  const columns = useMemo(() => columnsOf(costs?.currency ?? null), [costs]);
  const title = 'Interval between overhauls';
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <p>
        <strong>
          The interval is the maker&rsquo;s and the class society&rsquo;s to change; an extrapolation never
          authorises a longer one.
        </strong>{' '}
        Every running unit is carried through four equal intervals from new, its parts replaced at the
        accepted risk. Only what was measured counts here.
      </p>
      <IntervalCostFields query={query} onChange={onChange} />
      <WithAnswer asked={asked}>
        {(points) =>
          points.length === 0 ? (
            <p>No unit with a forecast and hours a year: there is nothing to compare.</p>
          ) : (
            <Curve points={points} columns={columns} title={title} />
          )
        }
      </WithAnswer>
    </section>
  );
}

interface CurveProps {
  readonly points: readonly IntervalPoint[];
  readonly columns: readonly DataColumn<IntervalPoint>[];
  readonly title: string;
}

function Curve({ points, columns, title }: CurveProps) {
  const build = useMemo<BuildSpec>(() => (theme, narrow) => intervalPicture(points, theme, narrow), [points]);
  const groups = [...new Set(points.map(({ group }) => group))];
  const ends = groups.map((group) => {
    const own = points.filter((point) => point.group === group);
    const [first, last] = [own[0], own.at(-1)];
    return first === undefined || last === undefined
      ? ''
      : `${group}: ${formatChance(first.chance)} at ${formatHours(first.interval_h)}, ${formatChance(last.chance)} at ${formatHours(last.interval_h)}`;
  });
  return (
    <>
      <Chart build={build} label={title} description={`${ends.join('. ')}.`} height_px={280} />
      <details>
        <summary>The numbers by interval</summary>
        <DataTable
          caption="Chance, overhauls and cost by interval"
          columns={columns}
          rows={points}
          rowKey={({ group, interval_h }) => `${group} ${interval_h}`}
          empty="There is nothing to compare."
        />
      </details>
    </>
  );
}
