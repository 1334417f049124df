'use client';

import { type ReactNode, useId } from 'react';
import type { TermName } from '../words/terms';
import { Term } from './Term';

interface FieldProps {
  readonly label: string;
  /** The term that the label explains, if it is one. */
  readonly term?: TermName | undefined;
  /** @param id of the control, by which its label finds it */
  readonly children: (id: string) => ReactNode;
}

/** A control under its label. The mark of a term stands beside the label: inside it, a click on the mark would reach the control. */
export function Field({ label, term, children }: FieldProps) {
  const id = useId();
  return (
    <div className="field">
      <span>
        <label htmlFor={id}>{label}</label>
        {term !== undefined && <Term name={term} />}
      </span>
      {children(id)}
    </div>
  );
}
