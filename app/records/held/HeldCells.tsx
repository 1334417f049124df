'use client';

import Link from 'next/link';
import { useContext } from 'react';
import type { Problem } from '../../../lib/analysis/types';
import { tablesPage } from '../../../lib/records/decisions/tableEdits';
import { placeWords, ruledWords } from '../../words/rulingWords';
import styles from './held.module.css';
import { RulingsContext } from './RulingsContext';
import { useFocusBack } from './useFocusBack';
import { placeOf } from './useRulings';

interface CellProps {
  readonly problem: Problem;
}

/** The tick that puts a held row among those to be ruled on together. */
export function SelectCell({ problem }: CellProps) {
  const rulings = useContext(RulingsContext);
  if (rulings === null || problem.action !== 'held' || problem.file === tablesPage) return null;
  return (
    <input
      type="checkbox"
      className={styles.tick}
      aria-label={`Select ${placeWords(problem.file, problem.row, problem.column)}`}
      checked={rulings.selected.has(placeOf(problem))}
      onChange={(event) => rulings.select([problem], event.target.checked)}
    />
  );
}

/** What was done with a row, and for a held one the way to rule on it. */
export function ActionCell({ problem }: CellProps) {
  const rulings = useContext(RulingsContext);
  const isOpen = rulings?.opened === problem;
  const opener = useFocusBack<HTMLButtonElement>(isOpen);
  if (rulings === null || problem.action !== 'held') return problem.action;
  if (problem.file === tablesPage)
    return (
      <>
        held: edit it on the page <Link href="/tables/">Tables</Link>
      </>
    );
  const made = rulings.made.get(placeOf(problem));
  const place = placeWords(problem.file, problem.row, problem.column);
  return (
    <span className={styles.action}>
      {made === undefined ? 'held' : `to be ${ruledWords(made)}`}
      <button
        ref={opener}
        type="button"
        aria-expanded={isOpen}
        onClick={() => rulings.open(isOpen ? null : problem)}
      >
        {isOpen ? 'Close' : 'Rule'}
        <span className="visuallyHidden">{` on ${place}`}</span>
      </button>
      {made !== undefined && (
        <button type="button" onClick={() => rulings.rule([problem], null)}>
          Put back<span className="visuallyHidden">{` ${place}`}</span>
        </button>
      )}
    </span>
  );
}
