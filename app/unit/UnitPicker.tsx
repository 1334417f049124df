'use client';

import { type FormEvent, useId, useMemo, useState } from 'react';
import type { FleetResult, UnitRow } from '../../lib/analysis/types';
import { mostListed } from '../fleet/ChoiceField';
import { searchedUnits, unitMatches } from '../search/unitMatches';

interface UnitPickerProps {
  readonly fleet: FleetResult;
  readonly id: string;
  readonly onPick: (unit: string) => void;
}

/** The units that are offered while so much is typed: of many only those that fit, since a list of thousands holds the page up as it comes and goes. */
function useOffered(units: readonly UnitRow[], typed: string): readonly UnitRow[] {
  const areMany = units.length > mostListed;
  const isUsed = areMany && typed !== '';
  const searched = useMemo(() => searchedUnits(isUsed ? units : []), [isUsed, units]);
  return useMemo(
    () => (areMany ? unitMatches(searched, typed, mostListed).shown : units),
    [areMany, searched, typed, units],
  );
}

/** Choice of a unit by typing its name, with the known names offered. */
export function UnitPicker({ fleet, id, onPick }: UnitPickerProps) {
  const listId = useId();
  const [typed, setTyped] = useState('');
  const offered = useOffered(fleet.units, typed);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const name = new FormData(event.currentTarget).get('unit');
    if (typeof name === 'string' && name.trim() !== '') onPick(name.trim());
  };
  return (
    <form className="controls" aria-label="Unit to show" onSubmit={submit}>
      <label>
        Unit
        <input
          key={id}
          name="unit"
          list={listId}
          defaultValue={id}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      <datalist id={listId}>
        {offered.map((unit) => (
          <option key={unit.unit} value={unit.unit}>
            {[unit.frame, unit.site, unit.engine].filter((part) => part !== null).join(', ')}
          </option>
        ))}
      </datalist>
      <button type="submit">Show unit</button>
    </form>
  );
}
