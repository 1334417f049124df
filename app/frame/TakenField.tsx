'use client';

import { type InputHTMLAttributes, type ReactNode, useId } from 'react';
import type { TermName } from '../words/terms';
import { Field } from './Field';

interface TakenFieldProps
  extends Pick<
    InputHTMLAttributes<HTMLInputElement>,
    'type' | 'min' | 'max' | 'step' | 'list' | 'placeholder'
  > {
  readonly label: string;
  readonly term?: TermName | undefined;
  readonly value: string | number;
  /** What is wrong with what was typed; null if nothing is. */
  readonly fault: ReactNode | null;
  readonly onTake: (text: string) => void;
  /** What belongs to the field besides, such as what it offers. */
  readonly children?: ReactNode;
}

/** A field whose text is taken on Enter or on leaving it, and not with every key: what follows from it takes its time. */
export function TakenField({ label, term, value, fault, onTake, children, ...input }: TakenFieldProps) {
  const faultId = useId();
  return (
    <Field label={label} term={term}>
      {(id) => (
        <>
          <input
            key={value}
            {...input}
            id={id}
            defaultValue={value}
            aria-invalid={fault !== null}
            aria-describedby={fault === null ? undefined : faultId}
            onBlur={(event) => onTake(event.target.value)}
            onKeyDown={(event) => event.key === 'Enter' && onTake(event.currentTarget.value)}
          />
          {children}
          {fault !== null && (
            <span id={faultId} role="alert">
              {fault}
            </span>
          )}
        </>
      )}
    </Field>
  );
}
