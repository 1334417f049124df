import type { SisterRow, StartRow } from '../../lib/analysis/sisters/types';
import {
  formatCount,
  formatLevel,
  formatMm,
  formatPercent,
  formatProbability,
  formatRate,
  formatRatio,
} from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { unitLinkColumn } from '../table/unitLinkColumn';
import { Written } from '../table/Written';

type Ratio = NonNullable<SisterRow['rate']['ratio']>;

function intervalColumn(
  id: string,
  header: string,
  ends: (ratio: Ratio) => readonly [number, number],
): DataColumn<SisterRow> {
  const text = ({ rate }: SisterRow) =>
    rate.ratio === null ? null : ends(rate.ratio).map(formatRatio).join(' to ');
  return {
    id,
    header,
    numeric: true,
    value: ({ rate }) => (rate.ratio === null ? null : ends(rate.ratio)[0]),
    cell: (row) => <Written text={text(row)} reason={row.rate.reason ?? 'no ratio'} />,
    saved: (['from', 'to'] as const).map((end, index) => ({
      header: `${header} ${end}`,
      value: ({ rate }) => (rate.ratio === null ? null : (ends(rate.ratio)[index] ?? null)),
    })),
  };
}

function probabilityColumn<Row>(id: string, header: string, value: (row: Row) => number): DataColumn<Row> {
  return { id, header, numeric: true, value, cell: (row) => formatProbability(value(row)) };
}

/** Columns of the units' wear rates against their sisters'. */
export const rateColumns: readonly DataColumn<SisterRow>[] = [
  unitLinkColumn(({ series }) => series),
  {
    id: 'ratio',
    header: 'Times its sisters’ rate',
    numeric: true,
    value: ({ rate }) => rate.ratio?.median ?? null,
    cell: ({ rate }) => (
      <Written
        text={rate.ratio === null ? null : formatRatio(rate.ratio.median)}
        reason={rate.reason ?? 'no ratio'}
      />
    ),
  },
  intervalColumn('interval80', '80 % interval', ({ lower80, upper80 }) => [lower80, upper80]),
  intervalColumn('interval95', '95 % interval', ({ lower95, upper95 }) => [lower95, upper95]),
  {
    id: 'difference',
    header: 'Difference in rate',
    unit: 'mm per 10000 h',
    numeric: true,
    value: ({ rate }) => rate.difference_mm_per_10kh.median,
    cell: ({ rate }) => formatRate(rate.difference_mm_per_10kh.median, null),
  },
  probabilityColumn('tail', 'Tail probability', ({ rate }) => rate.tailProbability),
  probabilityColumn('q', 'q value', ({ q }) => q),
  {
    id: 'readings',
    header: 'Readings',
    numeric: true,
    value: ({ readings }) => readings,
    cell: ({ readings }) => formatCount(readings),
  },
];

/** The limits that a start level lies outside, in words. */
function outsideWords({ outside }: StartRow): string {
  return outside === 'none' ? 'no' : `the ${formatPercent(Number(outside) / 100)} limits`;
}

/** Columns of the units' own start levels against the group's. */
export const startColumns: readonly DataColumn<StartRow>[] = [
  unitLinkColumn(({ series }) => series),
  {
    id: 'own',
    header: 'Own start ± SD',
    numeric: true,
    saved: [
      { header: 'Own start, mm', value: ({ own_mm }) => own_mm },
      { header: 'SD, mm', value: ({ sd_mm }) => sd_mm },
    ],
    value: ({ own_mm }) => own_mm,
    cell: ({ own_mm, sd_mm }) => formatLevel(own_mm, sd_mm),
  },
  {
    id: 'difference',
    header: 'Less the group’s',
    unit: 'mm',
    numeric: true,
    value: ({ difference_mm }) => difference_mm,
    cell: ({ difference_mm, sd_mm }) => formatMm(difference_mm, sd_mm),
  },
  { id: 'outside', header: 'Outside', value: outsideWords },
  probabilityColumn('tail', 'Tail probability', ({ tailProbability }) => tailProbability),
  probabilityColumn('q', 'q value', ({ q }) => q),
  {
    id: 'readings',
    header: 'Readings',
    numeric: true,
    value: ({ readings }) => readings,
    cell: ({ readings }) => formatCount(readings),
  },
];
