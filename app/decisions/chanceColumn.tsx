import { formatChance } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';

/**
 * A column of chances, each with why there is none where there is none.
 *
 * @param otherwise the reason of a row that gives none of its own
 */
export function chanceColumn<Row extends { readonly reason: string | null }>(
  id: string,
  header: string,
  value: (row: Row) => number | null,
  otherwise: string,
): DataColumn<Row> {
  return {
    id,
    header,
    unit: '0 to 1',
    numeric: true,
    value,
    cell: (row) => {
      const chance = value(row);
      return (
        <Written text={chance === null ? null : formatChance(chance)} reason={row.reason ?? otherwise} />
      );
    },
  };
}
