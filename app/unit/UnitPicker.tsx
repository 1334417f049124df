'use client';

import { type FormEvent, useId } from 'react';
import type { FleetResult } from '../../lib/analysis/types';

interface UnitPickerProps {
  readonly fleet: FleetResult;
  readonly id: string;
  readonly onPick: (unit: string) => void;
}

/** Choice of a unit by typing its name, with the known names offered. */
export function UnitPicker({ fleet, id, onPick }: UnitPickerProps) {
  const listId = useId();
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const name = new FormData(event.currentTarget).get('unit');
    if (typeof name === 'string' && name.trim() !== '') onPick(name.trim());
  };
  return (
    <form className="controls" aria-label="Unit to show" onSubmit={submit}>
      <label>
        Unit
        <input key={id} name="unit" list={listId} defaultValue={id} autoComplete="off" spellCheck={false} />
      </label>
      <datalist id={listId}>
        {fleet.units.map((unit) => (
          <option key={unit.unit} value={unit.unit}>
            {[unit.frame, unit.site, unit.engine].filter((part) => part !== null).join(', ')}
          </option>
        ))}
      </datalist>
      <button type="submit">Show unit</button>
    </form>
  );
}
