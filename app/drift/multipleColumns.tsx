import { formatScore } from '../../lib/charts/format';
import type { Multiple } from '../../lib/charts/smallMultiples';
import type { DataColumn } from '../table/DataColumn';
import { unitLinkColumn } from '../table/unitLinkColumn';
import { Written } from '../table/Written';

/** One cell of the picture as a row. */
export interface MultipleRow extends Multiple {
  readonly unit: string;
  readonly scores: readonly number[];
}

/** The row of a cell: its unit, and the residuals that could be had. */
export function multipleRow(multiple: Multiple): MultipleRow {
  const { unit, readings } = multiple.series;
  return { ...multiple, unit, scores: readings.flatMap(({ z }) => z ?? []) };
}

function scoreColumn(
  id: string,
  header: string,
  value: (scores: readonly number[]) => number | undefined,
): DataColumn<MultipleRow> {
  const score = ({ scores }: MultipleRow) => value(scores) ?? null;
  return {
    id,
    header,
    numeric: true,
    value: score,
    cell: (row) => (
      <Written
        text={score(row) === null ? null : formatScore(score(row))}
        reason="nothing could be foretold"
      />
    ),
  };
}

/** Columns of the numbers behind the small pictures of all units. */
export const multipleColumns: readonly DataColumn<MultipleRow>[] = [
  unitLinkColumn(({ series }) => series.series),
  { id: 'count', header: 'Residuals', numeric: true, value: ({ scores }) => scores.length },
  scoreColumn('least', 'Least z, SD', (scores) => [...scores].sort((a, b) => a - b)[0]),
  scoreColumn('largest', 'Largest z, SD', (scores) => [...scores].sort((a, b) => b - a)[0]),
  scoreColumn('last', 'Last z, SD', (scores) => scores.at(-1)),
  { id: 'signal', header: 'Signal', value: ({ found }) => (found ? 'open' : 'none') },
];
