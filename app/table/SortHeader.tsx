'use client';

import { Term } from '../frame/Term';
import { usePrinting } from '../frame/usePrinting';
import type { TermName } from '../words/terms';

interface SortHeaderProps {
  readonly name: string;
  readonly term: TermName | undefined;
  readonly numeric: boolean;
  readonly sorted: false | 'asc' | 'desc';
  readonly onToggle: () => void;
}

const ariaSort = { asc: 'ascending', desc: 'descending' } as const;
const arrows = { asc: '▲', desc: '▼' } as const;

/** A column head with the button that sorts by it: ascending, descending, then the order as given. */
export function SortHeader({ name, term, numeric, sorted, onToggle }: SortHeaderProps) {
  const printing = usePrinting();
  return (
    <th
      scope="col"
      className={numeric ? 'numeric' : undefined}
      // A cell is read with the name of its column, not with the offer to explain it.
      aria-label={term === undefined ? undefined : name}
      aria-sort={sorted === false ? undefined : ariaSort[sorted]}
    >
      {printing ? (
        // A head that a browser repeats on every sheet shows text, but no button.
        name
      ) : (
        <div className="markedHead">
          <button type="button" className="sortButton" onClick={onToggle}>
            {name}
            <span aria-hidden="true" className="sortArrow">
              {sorted === false ? '' : arrows[sorted]}
            </span>
          </button>
          {term !== undefined && <Term name={term} />}
        </div>
      )}
    </th>
  );
}
