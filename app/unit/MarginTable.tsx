import { useId } from 'react';
import type { MarginRow } from '../../lib/analysis/types';
import { formatMm } from '../../lib/charts/format';
import { TableExport } from '../export/TableExport';
import { MarkedName } from '../frame/MarkedName';
import type { DataColumn, SavedColumn } from '../table/DataColumn';
import { ScrollBox } from '../table/ScrollBox';
import { type SavedTable, savedTable } from '../table/savedTable';
import { Written } from '../table/Written';
import { capitalised } from '../words/seriesName';
import { marginQuantities } from './marginQuantities';

/** The table as it is saved: a row a quantity, a column a limit. */
function savedMargins(margins: readonly MarginRow[]): SavedTable {
  const limits = margins.map(limitText);
  const columns: readonly DataColumn<SavedColumn<MarginRow>>[] = [
    { id: 'quantity', header: 'Quantity', value: ({ header }) => header },
    ...margins.map((margin, index) => ({
      id: String(index),
      header: limits[index] ?? '',
      value: ({ value }: SavedColumn<MarginRow>) => value(margin),
    })),
  ];
  const rows = marginQuantities.flatMap(({ name, text, saved }) => saved ?? [{ header: name, value: text }]);
  return savedTable(columns, rows);
}

function limitText(margin: MarginRow): string {
  return margin.limit_mm === null
    ? 'No limit'
    : `${capitalised(margin.limitKind ?? 'upper')} limit ${formatMm(margin.limit_mm)}`;
}

function reasonOf(margin: MarginRow): string {
  if (margin.limit_mm === null) return 'no limit, no verdict';
  return margin.reason ?? 'no overhaul planned, or no forecast';
}

interface MarginTableProps {
  readonly caption: string;
  readonly margins: readonly MarginRow[];
}

/** Every number of the margins of one series: a column a limit, a row a quantity. */
export function MarginTable({ caption, margins }: MarginTableProps) {
  const captionId = useId();
  const columns = margins.map((margin, index) => ({ margin, key: `${margin.limitKind ?? 'none'} ${index}` }));
  return (
    <>
      <ScrollBox labelledBy={captionId} rows={marginQuantities.length}>
        <table>
          <caption id={captionId}>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">Quantity</th>
              {columns.map(({ margin, key }) => (
                <th key={key} scope="col" className="text">
                  {limitText(margin)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {marginQuantities.map((quantity) => (
              <tr key={quantity.name}>
                <th scope="row" aria-label={quantity.name}>
                  <MarkedName name={quantity.name} term={quantity.term} />
                </th>
                {columns.map(({ margin, key }) => (
                  <td key={key} className="value">
                    <Written text={quantity.text(margin)} reason={quantity.reason ?? reasonOf(margin)} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      <TableExport title={caption} table={() => savedMargins(margins)} />
    </>
  );
}
