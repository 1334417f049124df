'use client';

import { Field } from '../frame/Field';
import { TakenField } from '../frame/TakenField';
import type { TermName } from '../words/terms';

/** One value that may be chosen. */
export interface Choice {
  readonly code: string;
  readonly name: string;
}

/** A list of more is typed into: nobody looks through it, and thousands of options take a second to draw. */
export const mostListed = 300;

interface ChoiceFieldProps {
  readonly label: string;
  readonly term?: TermName | undefined;
  readonly options: readonly Choice[];
  /** Empty for all. */
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** One of a few values from a list, or one of many by its name. */
export function ChoiceField({ label, term, options, value, onChange }: ChoiceFieldProps) {
  const isKnown = value === '' || options.some((option) => option.code === value);
  if (options.length > mostListed) {
    return (
      <TakenField
        label={label}
        term={term}
        type="text"
        placeholder="all"
        value={value}
        fault={isKnown ? null : 'not in the data'}
        onTake={(text) => text.trim() !== value && onChange(text.trim())}
      />
    );
  }
  return (
    <Field label={label} term={term}>
      {(id) => (
        <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
          <option value="">all</option>
          {!isKnown && <option value={value}>{value} (not in the data)</option>}
          {options.map((option) => (
            <option key={option.code} value={option.code}>
              {option.name}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
