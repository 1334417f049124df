import { useId } from 'react';
import { ScrollBox } from '../table/ScrollBox';

interface MethodsTableProps {
  readonly caption: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A small table of numbers, the first column naming its rows. */
export function MethodsTable({ caption, header, rows }: MethodsTableProps) {
  const captionId = useId();
  return (
    <ScrollBox labelledBy={captionId}>
      <table>
        <caption id={captionId}>{caption}</caption>
        <thead>
          <tr>
            {header.map((name) => (
              <th key={name} scope="col" className="numeric">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.slice(0, 2).join(' ')}>
              {row.map((cell, index) =>
                index === 0 ? (
                  <th key={header[index]} scope="row" className="numeric">
                    {cell}
                  </th>
                ) : (
                  <td key={header[index]} className="numeric">
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
