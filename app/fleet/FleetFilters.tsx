'use client';

import { isWholeFleet } from '../../lib/analysis/scope';
import type { FleetResult, UnitRow } from '../../lib/analysis/types';
import { compareValues } from '../table/compareValues';
import { type FleetFilter, limitedSeries } from './fleetRows';
import { noScope, unitsText } from './scopeAddress';
import { UnitsField } from './UnitsField';

interface FleetFiltersProps {
  readonly fleet: FleetResult;
  readonly filter: FleetFilter;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
  /** Whether one series may be looked at alone. */
  readonly withSeries?: boolean;
}

interface Choice {
  readonly code: string;
  readonly name: string;
}

function valuesOf(units: readonly UnitRow[], value: (unit: UnitRow) => string | null): readonly Choice[] {
  const values = new Set(units.map(value).filter((found) => found !== null));
  return [...values].sort(compareValues).map((found) => ({ code: found, name: found }));
}

/** Choices of site, frame, engine, workshop, series and units, kept in the address. */
export function FleetFilters({ fleet, filter, onChange, withSeries = true }: FleetFiltersProps) {
  const atSite = fleet.units.filter((unit) => filter.site === '' || unit.site === filter.site);
  const choices = [
    { name: 'site', label: 'Site', options: valuesOf(fleet.units, (unit) => unit.site) },
    { name: 'frame', label: 'Frame', options: valuesOf(fleet.units, (unit) => unit.frame) },
    { name: 'engine', label: 'Engine', options: valuesOf(atSite, (unit) => unit.engine) },
    {
      name: 'workshop',
      label: 'Last workshop',
      options: valuesOf(fleet.units, (unit) => unit.lastWorkshop),
    },
    ...(withSeries ? [{ name: 'series', label: 'Series', options: limitedSeries(fleet) } as const] : []),
  ] as const;
  const any = !isWholeFleet(filter) || filter.series !== '';
  return (
    <form className="controls" aria-label="Filters" onSubmit={(event) => event.preventDefault()}>
      {choices.map((choice) => (
        <label key={choice.name}>
          {choice.label}
          <select
            value={filter[choice.name]}
            onChange={(event) => onChange({ [choice.name]: event.target.value, page: '' })}
          >
            <option value="">all</option>
            {filter[choice.name] !== '' &&
              !choice.options.some((option) => option.code === filter[choice.name]) && (
                <option value={filter[choice.name]}>{filter[choice.name]} (not in the data)</option>
              )}
            {choice.options.map((option) => (
              <option key={option.code} value={option.code}>
                {option.name}
              </option>
            ))}
          </select>
        </label>
      ))}
      <UnitsField
        fleet={fleet}
        units={filter.units}
        onUnits={(units) => onChange({ units: unitsText(units), page: '' })}
      />
      {any && (
        <button type="button" onClick={() => onChange({ ...noScope, series: '', page: '' })}>
          Show all
        </button>
      )}
    </form>
  );
}
