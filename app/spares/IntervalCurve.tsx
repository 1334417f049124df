'use client';

import { useMemo } from 'react';
import type { IntervalPoint } from '../../lib/analysis/demand/intervalCurve';
import { type IntervalMeasure, intervalPicture } from '../../lib/charts/intervalPicture';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { Prose } from '../frame/Prose';
import { DataTable } from '../table/DataTable';
import { costGap, intervalFinding, intervalSentences } from '../words/intervalSentence';
import { IntervalCostFields } from './IntervalCostFields';
import { intervalColumns } from './intervalColumns';
import type { PlanPanelProps } from './PlanPanelProps';
import { intervalCosts } from './sparesAddress';

/** Chance of passing a limit in service, and overhauls and cost a year, against the interval between overhauls. */
export function IntervalCurve({ fleet, settings, query, onChange }: PlanPanelProps) {
  const { given, costs } = useMemo(() => intervalCosts(query), [query]);
  const asked = useAsked(fleet, 'intervalCurve', settings.acceptedRisk, costs);
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
        accepted risk. Only what was measured counts here. Ringed: the planned interval; hollow: longer than
        any run on record.
      </p>
      <IntervalCostFields query={query} onChange={onChange} />
      <WithAnswer asked={asked}>
        {(points) =>
          points.length === 0 ? (
            <p>No unit with a forecast and hours a year: there is nothing to compare.</p>
          ) : (
            <Curve points={points} given={given} currency={costs?.currency ?? null} />
          )
        }
      </WithAnswer>
    </section>
  );
}

interface CurveProps {
  readonly points: readonly IntervalPoint[];
  readonly given: readonly boolean[];
  readonly currency: string | null;
}

function Curve({ points, given, currency }: CurveProps) {
  const columns = useMemo(() => intervalColumns(currency), [currency]);
  const sentences = intervalSentences(points, currency);
  const gap = costGap(points, given, currency);
  const priced = points.some(({ costAYear }) => costAYear !== null);
  const drawn = { points, currency };
  return (
    <>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>
            <Prose text={sentence} />
          </li>
        ))}
      </ul>
      {gap !== null && <p role="status">{gap}</p>}
      <Measured {...drawn} measure="chance" label="Chance of passing a limit in service by interval" />
      <Measured {...drawn} measure="overhaulsAYear" label="Overhauls a year by interval" />
      {priced && (
        <Measured {...drawn} measure="costAYear" label={`Cost a year by interval, ${currency ?? ''}`} />
      )}
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

interface MeasuredProps {
  readonly points: readonly IntervalPoint[];
  readonly currency: string | null;
  readonly measure: IntervalMeasure;
  readonly label: string;
}

function Measured({ points, currency, measure, label }: MeasuredProps) {
  const build = useMemo<BuildSpec>(
    () => (theme, narrow) => intervalPicture(points, measure, theme, narrow),
    [points, measure],
  );
  const finding = intervalFinding(points, measure, currency);
  return <Chart build={build} label={label} description={finding} height_px={200} />;
}
