'use client';

import { useEffect, useState } from 'react';
import type { AnswerDecision } from '../../lib/records/decisions/Decision';
import { decisionsInForce } from '../../lib/records/decisions/journal';
import { useEngine } from '../engine/EngineProvider';
import { ScrollBox } from '../table/ScrollBox';
import { Written } from '../table/Written';
import styles from './records.module.css';

/** Every answer in force, each with a button that asks its question again. */
export function AnswersGiven({ onTakeBack }: { readonly onTakeBack: (ids: readonly string[]) => void }) {
  const { state, journal } = useEngine();
  const [given, setGiven] = useState<readonly AnswerDecision[]>([]);
  const busy = state.work !== null;
  useEffect(() => {
    if (busy) return;
    let stale = false;
    journal().then(
      (found) => !stale && setGiven(decisionsInForce(found).filter((one) => one.kind === 'answer')),
      () => !stale && setGiven([]),
    );
    return () => {
      stale = true;
    };
  }, [journal, busy]);
  if (given.length === 0) return null;
  return (
    <section aria-labelledby="answers">
      <h2 id="answers">Answers given</h2>
      <p>They are kept in this browser with your files and applied whenever those are read.</p>
      <ScrollBox labelledBy="answers-caption">
        <table>
          <caption id="answers-caption">Answers in force, in order of giving</caption>
          <thead>
            <tr>
              <th scope="col">File</th>
              <th scope="col">Column</th>
              <th scope="col">Question</th>
              <th scope="col">Answer</th>
              <th scope="col" className="screenOnly">
                Change
              </th>
            </tr>
          </thead>
          <tbody>
            {given.map((one) => (
              <tr key={one.id}>
                <th scope="row">
                  <span className={styles.name}>{one.file}</span>
                </th>
                <td>
                  <span className={styles.name}>
                    <Written text={one.column} reason="the whole file" />
                  </span>
                </td>
                <td className="text">{one.question}</td>
                <td className="value">{one.answer}</td>
                <td className="screenOnly">
                  <button type="button" disabled={busy} onClick={() => onTakeBack([one.id])}>
                    Take back
                    <span className="visuallyHidden">{` ‘${one.answer}’ to: ${one.question}`}</span>
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </section>
  );
}
