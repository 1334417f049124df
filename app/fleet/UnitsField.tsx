'use client';

import { useId } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { namesWords } from '../words/sparesSentence';

interface UnitsFieldProps {
  readonly fleet: FleetResult;
  readonly units: readonly string[];
  readonly onUnits: (units: readonly string[]) => void;
}

const mostNamed = 5;

/** A set of units by their names, parted by commas; taken on Enter or on leaving the field. Empty for all. */
export function UnitsField({ fleet, units, onUnits }: UnitsFieldProps) {
  const faultId = useId();
  const text = units.join(', ');
  const known = new Set(fleet.units.map(({ unit }) => unit));
  const unknown = units.filter((unit) => !known.has(unit));
  const take = (typed: string) => {
    const names = typed
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== '');
    if (names.join(', ') !== text) onUnits([...new Set(names)]);
  };
  return (
    <label>
      Units, parted by commas
      <input
        key={text}
        type="text"
        defaultValue={text}
        placeholder="all"
        aria-invalid={unknown.length > 0}
        aria-describedby={unknown.length > 0 ? faultId : undefined}
        onBlur={(event) => take(event.target.value)}
        onKeyDown={(event) => event.key === 'Enter' && take(event.currentTarget.value)}
      />
      {unknown.length > 0 && (
        <span id={faultId} role="alert">
          not in the data: {namesWords(unknown, mostNamed)}
        </span>
      )}
    </label>
  );
}
