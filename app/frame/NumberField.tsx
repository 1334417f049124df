'use client';

import { useId, useState } from 'react';
import { formatSignificant, typedNumber } from '../../lib/charts/format';

interface NumberFieldProps {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** Called with a number in range as it was typed. */
  readonly onValue: (text: string) => void;
}

/** A number with its range: what is typed takes effect as soon as it is within, and says so while it is not. */
export function NumberField({ label, value, least, most, onValue }: NumberFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const faultId = useId();
  const shown = typed ?? typedNumber(value);
  const isOut = typed !== null && !(typed.trim() !== '' && Number(typed) >= least && Number(typed) <= most);
  return (
    <label>
      {label}
      <input
        type="number"
        step="any"
        min={least}
        max={most}
        value={shown}
        aria-invalid={isOut}
        aria-describedby={isOut ? faultId : undefined}
        onBlur={() => setTyped(null)}
        onChange={(event) => {
          const text = event.target.value;
          setTyped(text);
          if (text.trim() !== '' && Number(text) >= least && Number(text) <= most) onValue(text);
        }}
      />
      {isOut && (
        <span id={faultId} role="alert">
          from {formatSignificant(least, 6)} to {formatSignificant(most, 6)}
        </span>
      )}
    </label>
  );
}
