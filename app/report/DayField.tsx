'use client';

import { useId, useState } from 'react';
import { firstDay, isDay, lastDay } from './reportAddress';

interface DayFieldProps {
  readonly label: string;
  /** YYYY-MM-DD; empty for none. */
  readonly value: string;
  /** Called with a day, or with an empty text. */
  readonly onDay: (day: string) => void;
}

/** A day; taken on Enter or on leaving the field, since a paper takes its time. */
export function DayField({ label, value, onDay }: DayFieldProps) {
  const faultId = useId();
  const [refused, setRefused] = useState(false);
  const take = (text: string) => {
    const fits = text === '' || isDay(text);
    setRefused(!fits);
    if (fits && text !== value) onDay(text);
  };
  return (
    <label>
      {label}
      <input
        key={value}
        type="date"
        min={firstDay}
        max={lastDay}
        defaultValue={value}
        aria-invalid={refused}
        aria-describedby={refused ? faultId : undefined}
        onBlur={(event) => take(event.target.value)}
        onKeyDown={(event) => event.key === 'Enter' && take(event.currentTarget.value)}
      />
      {refused && (
        <span id={faultId} role="alert">
          a day from {firstDay} to {lastDay}
        </span>
      )}
    </label>
  );
}
