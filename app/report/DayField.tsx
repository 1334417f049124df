'use client';

import { useState } from 'react';
import { TakenField } from '../frame/TakenField';
import { firstDay, isDay, lastDay } from './reportAddress';

interface DayFieldProps {
  readonly label: string;
  /** YYYY-MM-DD; empty for none. */
  readonly value: string;
  /** Called with a day, or with an empty text. */
  readonly onDay: (day: string) => void;
}

/** A day, or none. */
export function DayField({ label, value, onDay }: DayFieldProps) {
  const [refused, setRefused] = useState(false);
  const take = (text: string) => {
    const fits = text === '' || isDay(text);
    setRefused(!fits);
    if (fits && text !== value) onDay(text);
  };
  return (
    <TakenField
      label={label}
      type="date"
      min={firstDay}
      max={lastDay}
      value={value}
      fault={refused ? `a day from ${firstDay} to ${lastDay}` : null}
      onTake={take}
    />
  );
}
