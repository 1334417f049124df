'use client';

import Link from 'next/link';
import { useCallback } from 'react';
import type { GroupBy } from '../../lib/analysis/grouping/sisterGroupOf';
import type { FactorDifference, LevelDifference } from '../../lib/analysis/sisters/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatCount, formatScore } from '../../lib/charts/format';
import { meanHint, meansPicture } from '../../lib/charts/meansPicture';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { differenceSentence } from '../words/sistersSentence';

const sides = { none: 'no', lower: 'below', upper: 'above' } as const;

const columns: readonly DataColumn<LevelDifference>[] = [
  { id: 'level', header: 'Level', rowHeader: true, value: ({ level }) => level },
  {
    id: 'count',
    header: 'Values',
    numeric: true,
    value: ({ count }) => count,
    cell: ({ count }) => formatCount(count),
  },
  {
    id: 'mean',
    header: 'Mean, SD',
    numeric: true,
    value: ({ mean }) => mean,
    cell: ({ mean }) => formatScore(mean),
  },
  {
    id: 'lower',
    header: 'Lower limit, SD',
    numeric: true,
    value: ({ lower }) => lower,
    cell: ({ lower }) => formatScore(lower),
  },
  {
    id: 'upper',
    header: 'Upper limit, SD',
    numeric: true,
    value: ({ upper }) => upper,
    cell: ({ upper }) => formatScore(upper),
  },
  { id: 'outside', header: 'Outside', value: ({ outside }) => sides[outside] },
];

function Difference({ difference }: { readonly difference: FactorDifference }) {
  const build = useCallback<BuildSpec>((theme) => meansPicture(difference, theme), [difference]);
  const { factor, compared, levels } = difference;
  const sentence = differenceSentence(difference);
  if (levels.length === 0) return <p>{sentence}</p>;
  return (
    <>
      <p>{sentence}</p>
      <details open={levels.some(({ outside }) => outside !== 'none')}>
        <summary>
          Means by {factor}, {compared}
        </summary>
        <Chart
          build={build}
          label={`Means by ${factor}, ${compared}`}
          description={levels.map(meanHint).join('. ')}
          height_px={levels.length * 28 + 40}
        />
        <DataTable
          caption={`Means by ${factor}, ${compared}`}
          columns={columns}
          rows={levels}
          rowKey={({ level }) => level}
          empty="There is nothing to compare."
        />
      </details>
    </>
  );
}

interface DifferencesProps {
  readonly fleet: FleetResult;
  readonly groupBy: GroupBy;
  readonly series: string;
}

/** Differences between sites, duties and workshops in one series. */
export function Differences({ fleet, groupBy, series }: DifferencesProps) {
  const asked = useAsked(fleet, 'differences', groupBy);
  return (
    <section aria-label="Differences">
      <h2>Sites, duties and workshops</h2>
      <p>
        Points: the mean of each level. Bars: the limits within which all means lie at once with 95&nbsp;% if
        the levels do not differ; filled points lie outside. A difference says that levels differ, not why.{' '}
        <Link href="/methods/#differences">How this was computed</Link>
      </p>
      <WithAnswer asked={asked}>
        {(differences) =>
          differences
            .filter((one) => one.series === series)
            .map((difference) => (
              <Difference key={`${difference.factor} ${difference.compared}`} difference={difference} />
            ))
        }
      </WithAnswer>
    </section>
  );
}
