'use client';

import { usePrinting } from '../frame/usePrinting';

interface SortHeaderProps {
  readonly name: string;
  readonly numeric: boolean;
  readonly sorted: false | 'asc' | 'desc';
  readonly onToggle: () => void;
}

const ariaSort = { asc: 'ascending', desc: 'descending' } as const;
const arrows = { asc: '▲', desc: '▼' } as const;

/** A column head with the button that sorts by it: ascending, descending, then the order as given. */
export function SortHeader({ name, numeric, sorted, onToggle }: SortHeaderProps) {
  const printing = usePrinting();
  return (
    <th
      scope="col"
      className={numeric ? 'numeric' : undefined}
      aria-sort={sorted === false ? undefined : ariaSort[sorted]}
    >
      {printing ? (
        // A head that a browser repeats on every sheet shows text, but no button.
        name
      ) : (
        <button type="button" className="sortButton" onClick={onToggle}>
          {name}
          <span aria-hidden="true" className="sortArrow">
            {sorted === false ? '' : arrows[sorted]}
          </span>
        </button>
      )}
    </th>
  );
}
