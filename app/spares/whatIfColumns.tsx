import type { Difference, PartDifference } from '../../lib/analysis/demand/whatIf';
import { formatDate, formatPieces, noValue } from '../../lib/charts/format';
import type { CellValue, DataColumn, SavedColumn } from '../table/DataColumn';
import { NoValue } from '../table/NoValue';
import { moneyWords } from '../words/sparesSentence';

/** A number that stays as it is; one that changes stands out. */
function Changed<T>({
  of: { present, changed },
  write,
}: {
  readonly of: Difference<T>;
  readonly write: (value: T) => string;
}) {
  const [before, after] = [write(present), write(changed)];
  return before === after ? (
    before
  ) : (
    <strong>
      {before} to {after}
    </strong>
  );
}

/** A change in a saved table: what is now, and what would be. */
function saved<T extends CellValue>(
  header: string,
  value: (row: PartDifference) => Difference<T>,
): readonly SavedColumn<PartDifference>[] {
  return [
    { header: `${header}, now`, value: (row) => value(row).present },
    { header: `${header}, changed`, value: (row) => value(row).changed },
  ];
}

function number(
  id: string,
  header: string,
  value: (row: PartDifference) => Difference,
): DataColumn<PartDifference> {
  return {
    id,
    header,
    numeric: true,
    value: (row) => value(row).changed - value(row).present,
    saved: saved(header, value),
    cell: (row) => <Changed of={value(row)} write={formatPieces} />,
  };
}

/** Columns of what a changed plan does to a part. */
export const whatIfColumns: readonly DataColumn<PartDifference>[] = [
  { id: 'part', header: 'Part', rowHeader: true, value: ({ part }) => part },
  number('quantity', 'Quantity', ({ quantity }) => quantity),
  {
    id: 'by',
    header: 'Order by',
    saved: saved('Order by', ({ orderBy }) => orderBy),
    value: ({ orderBy }) => orderBy.changed,
    cell: ({ orderBy }) => (
      <Changed of={orderBy} write={(day) => (day === null ? 'no order day' : formatDate(day))} />
    ),
  },
  number('mean', 'Demand, mean', ({ demandMean }) => demandMean),
  number('p90', 'Demand, 90 %', ({ demandP90 }) => demandP90),
  {
    id: 'cost',
    header: 'Cost',
    numeric: true,
    saved: [...saved('Cost', ({ cost }) => cost), { header: 'Currency', value: ({ currency }) => currency }],
    value: ({ cost }) => cost.changed,
    cell: ({ cost, currency }) =>
      cost.changed === null ? (
        <NoValue reason="no price is given" />
      ) : (
        <Changed of={cost} write={(value) => moneyWords(value, currency) ?? noValue} />
      ),
  },
];
