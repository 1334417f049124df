'use client';

import { useEffect, useId, useRef, useState } from 'react';
import type { Problem } from '../../../lib/analysis/types';
import { releaseWords } from '../../words/rulingWords';
import styles from './held.module.css';
import type { Ruled } from './useRulings';

interface HeldFormProps {
  /** Held rows that the ruling is about. */
  readonly problems: readonly Problem[];
  /** The whole line in the file, if there is one row and its line is known. */
  readonly line: string | null;
  readonly onRule: (ruled: Ruled) => void;
}

/** A text that was cut where it is listed. */
const isCut = (raw: string) => raw.endsWith('…');

/** The text that editing starts from: what stands in the file, for one row. */
function startingText(problems: readonly Problem[], line: string | null): string {
  const [first, second] = problems;
  if (first === undefined || second !== undefined) return '';
  return first.column === '' && isCut(first.raw) ? (line ?? '') : first.raw;
}

/** A ruling on one held row, its raw text beside it, or the same ruling on several. */
export function HeldForm({ problems, line, onRule }: HeldFormProps) {
  const id = useId();
  const start = startingText(problems, line);
  const [typed, setTyped] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const [message, setMessage] = useState<string | null>(null);
  const textField = useRef<HTMLInputElement>(null);
  const reasonField = useRef<HTMLInputElement>(null);
  const text = typed ?? start;
  const isOne = problems.length === 1;
  const mayRelease = problems.every(({ releasable }) => releasable === true);
  useEffect(() => {
    if (isOne) textField.current?.focus();
  }, [isOne]);
  const rule = (ruling: Ruled['ruling']) => {
    if (ruling === 'edit' && problems.every(({ raw }) => raw === text)) {
      setMessage('The text is the one that stands in the file: type what is right.');
      textField.current?.focus();
    } else if (reason.trim() === '') {
      setMessage('Give the reason: it stands beside the row and in the journal.');
      reasonField.current?.focus();
    } else onRule({ ruling, text: ruling === 'edit' ? text : null, reason: reason.trim() });
  };
  return (
    <form
      className={styles.form}
      aria-label={isOne ? 'Ruling' : `Ruling on ${problems.length} selected rows`}
      onSubmit={(event) => {
        event.preventDefault();
        rule('edit');
      }}
    >
      {isOne && (
        <dl className={styles.facts}>
          <dt>As it stands in the file</dt>
          <dd>
            {problems[0]?.raw === '' ? 'empty' : <code className={styles.line}>{problems[0]?.raw}</code>}
          </dd>
          {line !== null && (
            <>
              <dt>Whole line</dt>
              <dd>
                <code className={styles.line}>{line}</code>
              </dd>
            </>
          )}
        </dl>
      )}
      <div className={styles.fields}>
        <label>
          {isOne ? 'Text to be read in its place' : 'Text to be read in place of each'}
          <input ref={textField} value={text} onChange={(event) => setTyped(event.target.value)} />
        </label>
        <label>
          Reason
          <input
            ref={reasonField}
            value={reason}
            aria-describedby={message === null ? undefined : `${id}-message`}
            onChange={(event) => setReason(event.target.value)}
          />
        </label>
      </div>
      <p className="buttons">
        <button type="submit">Use this text</button>
        <button
          type="button"
          disabled={!mayRelease}
          aria-describedby={`${id}-release`}
          onClick={() => rule('release')}
        >
          Use as it stands
        </button>
        <button type="button" onClick={() => rule('leave out')}>
          Leave out
        </button>
      </p>
      <p id={`${id}-release`} className={styles.note}>
        {releaseWords(problems)}
      </p>
      <p id={`${id}-message`} role="alert">
        {message}
      </p>
    </form>
  );
}
