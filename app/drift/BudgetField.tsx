'use client';

import { useId, useState } from 'react';
import { formatSignificant } from '../../lib/charts/format';
import { TakenField } from '../frame/TakenField';
import { leastBudget_per_year, mostBudget_per_year } from './driftAddress';

const offered = [0.5, 1, 2, 4, 6];

interface BudgetFieldProps {
  readonly budget_per_year: number;
  readonly onChange: (budget_per_year: number) => void;
}

/** False signals a year of the whole fleet: some are offered, any can be typed. */
export function BudgetField({ budget_per_year, onChange }: BudgetFieldProps) {
  const listId = useId();
  const [refused, setRefused] = useState(false);
  const take = (text: string) => {
    const budget = Number(text);
    const fits = budget >= leastBudget_per_year && budget <= mostBudget_per_year;
    setRefused(!fits);
    if (fits && budget !== budget_per_year) onChange(budget);
  };
  const range = [leastBudget_per_year, mostBudget_per_year].map((end) => formatSignificant(end, 6));
  return (
    <TakenField
      label="False signals a year, whole fleet"
      type="number"
      min={leastBudget_per_year}
      max={mostBudget_per_year}
      step="any"
      list={listId}
      value={budget_per_year}
      fault={refused ? `A number from ${range.join(' to ')}, please.` : null}
      onTake={take}
    >
      <datalist id={listId}>
        {offered.map((budget) => (
          <option key={budget} value={budget} />
        ))}
      </datalist>
    </TakenField>
  );
}
