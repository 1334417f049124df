'use client';

import { useMemo } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { TakenField } from '../frame/TakenField';
import { namesWords } from '../words/namesWords';

interface UnitsFieldProps {
  readonly fleet: Pick<FleetResult, 'units'>;
  readonly units: readonly string[];
  readonly onUnits: (units: readonly string[]) => void;
}

const mostNamed = 5;

/** A set of units by their names, parted by commas. Empty for all. */
export function UnitsField({ fleet, units, onUnits }: UnitsFieldProps) {
  const text = units.join(', ');
  const unknown = useMemo(() => {
    if (units.length === 0) return [];
    const known = new Set(fleet.units.map(({ unit }) => unit));
    return units.filter((unit) => !known.has(unit));
  }, [fleet, units]);
  const take = (typed: string) => {
    const names = typed
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== '');
    if (names.join(', ') !== text) onUnits([...new Set(names)]);
  };
  return (
    <TakenField
      label="Units, parted by commas"
      type="text"
      placeholder="all"
      value={text}
      fault={unknown.length > 0 ? `not in the data: ${namesWords(unknown, mostNamed)}` : null}
      onTake={take}
    />
  );
}
