'use client';

import { useMemo } from 'react';
import { isWholeFleet } from '../../lib/analysis/scope';
import type { FleetResult, UnitRow } from '../../lib/analysis/types';
import { compareValues } from '../table/compareValues';
import { type Choice, ChoiceField, mostListed } from './ChoiceField';
import { type FleetFilter, limitedSeries } from './fleetRows';
import { noScope, unitsText } from './scopeAddress';
import { UnitsField } from './UnitsField';

interface FleetFiltersProps {
  readonly fleet: Pick<FleetResult, 'units' | 'margins' | 'characteristics'>;
  readonly filter: FleetFilter;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
  /** Whether one series may be looked at alone. */
  readonly withSeries?: boolean;
}

function valuesOf(units: readonly UnitRow[], value: (unit: UnitRow) => string | null): readonly Choice[] {
  const values = [...new Set(units.map(value).filter((found) => found !== null))];
  // Those that are typed and not listed are in no order.
  const shown = values.length > mostListed ? values : values.sort(compareValues);
  return shown.map((found) => ({ code: found, name: found }));
}

/** Choices of site, frame, engine, workshop, series and units, kept in the address. */
export function FleetFilters({ fleet, filter, onChange, withSeries = true }: FleetFiltersProps) {
  const { site } = filter;
  const choices = useMemo(() => {
    const atSite = fleet.units.filter((unit) => site === '' || unit.site === site);
    return [
      { name: 'site', label: 'Site', options: valuesOf(fleet.units, (unit) => unit.site) },
      { name: 'frame', label: 'Frame', term: 'frame', options: valuesOf(fleet.units, (unit) => unit.frame) },
      { name: 'engine', label: 'Engine', options: valuesOf(atSite, (unit) => unit.engine) },
      {
        name: 'workshop',
        label: 'Last workshop',
        options: valuesOf(fleet.units, (unit) => unit.lastWorkshop),
      },
      ...(withSeries
        ? [{ name: 'series', label: 'Series', term: 'series', options: limitedSeries(fleet) } as const]
        : []),
    ] as const;
  }, [fleet, site, withSeries]);
  const any = !isWholeFleet(filter) || filter.series !== '';
  return (
    <form className="controls" aria-label="Filters" onSubmit={(event) => event.preventDefault()}>
      {choices.map((choice) => (
        <ChoiceField
          key={choice.name}
          label={choice.label}
          term={'term' in choice ? choice.term : undefined}
          options={choice.options}
          value={filter[choice.name]}
          onChange={(value) => onChange({ [choice.name]: value, page: '' })}
        />
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
