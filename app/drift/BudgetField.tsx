'use client';

import { useId, useState } from 'react';
import { formatSignificant } from '../../lib/charts/format';
import { leastBudget_per_year, mostBudget_per_year } from './driftAddress';

const offered = [0.5, 1, 2, 4, 6];

interface BudgetFieldProps {
  readonly budget_per_year: number;
  readonly onChange: (budget_per_year: number) => void;
}

/** False signals a year of the whole fleet: some are offered, any can be typed; taken on Enter or on leaving the field. */
export function BudgetField({ budget_per_year, onChange }: BudgetFieldProps) {
  const listId = useId();
  const failureId = useId();
  const [refused, setRefused] = useState(false);
  const take = (text: string) => {
    const budget = Number(text);
    const fits = budget >= leastBudget_per_year && budget <= mostBudget_per_year;
    setRefused(!fits);
    if (fits && budget !== budget_per_year) onChange(budget);
  };
  return (
    <label>
      False signals a year, whole fleet
      <input
        key={budget_per_year}
        type="number"
        min={leastBudget_per_year}
        max={mostBudget_per_year}
        step="any"
        list={listId}
        defaultValue={budget_per_year}
        aria-invalid={refused}
        aria-describedby={refused ? failureId : undefined}
        onBlur={(event) => take(event.target.value)}
        onKeyDown={(event) => event.key === 'Enter' && take(event.currentTarget.value)}
      />
      <datalist id={listId}>
        {offered.map((budget) => (
          <option key={budget} value={budget} />
        ))}
      </datalist>
      {refused && (
        <span role="alert" id={failureId}>
          A number from {formatSignificant(leastBudget_per_year, 6)} to{' '}
          {formatSignificant(mostBudget_per_year, 6)}, please.
        </span>
      )}
    </label>
  );
}
