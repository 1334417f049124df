'use client';

import Link from 'next/link';
import { termId, termNames, terms } from '../words/terms';
import styles from './term.module.css';
import { hideNoteOf, noteIds } from './termNote';

/** What every term means, once a page and out of sight until a term shows it. */
export function TermNotes() {
  return (
    <aside aria-label="What words mean">
      {termNames.map((name) => {
        const ids = noteIds(name);
        return (
          <div key={name} id={ids.note} popover="auto" className={styles.note}>
            <p id={ids.says}>{terms[name].says}</p>
            <p>
              <Link href={`/methods/#${termId(name)}`} prefetch={false} onBlur={() => hideNoteOf(name)}>
                ‘{terms[name].word}’ in Methods
              </Link>
            </p>
          </div>
        );
      })}
    </aside>
  );
}
