'use client';

import type { FocusEvent, ReactNode, SyntheticEvent } from 'react';
import { type TermName, terms } from '../words/terms';
import styles from './term.module.css';
import { hideNoteOf, isInNoteOf, noteIds, showNoteOf } from './termNote';

interface TermProps {
  readonly name: TermName;
  /** The word as the sentence has it; without it a mark stands beside a head or label that holds the word. */
  readonly children?: ReactNode;
}

/** A word that explains itself on focus, click or touch, until Escape is pressed or the focus goes on. */
export function Term({ name, children }: TermProps) {
  const ids = noteIds(name);
  const show = ({ currentTarget }: SyntheticEvent<HTMLElement>) => showNoteOf(name, currentTarget);
  // The way to Methods stands in the note itself.
  const leave = ({ relatedTarget }: FocusEvent) => isInNoteOf(name, relatedTarget) || hideNoteOf(name);
  return (
    <button
      type="button"
      data-term={name}
      className={children === undefined ? styles.mark : styles.term}
      aria-label={children === undefined ? `What ‘${terms[name].word}’ means` : undefined}
      aria-describedby={ids.says}
      popoverTarget={ids.note}
      popoverTargetAction="show"
      onFocus={show}
      onClick={show}
      onBlur={leave}
      onKeyDown={({ key }) => key === 'Escape' && hideNoteOf(name)}
    >
      {children ?? '?'}
    </button>
  );
}
