import { useId } from 'react';
import type { Question } from '../../lib/analysis/types';
import { questionPlace } from '../words/questionWords';
import styles from './records.module.css';

interface QuestionFieldProps {
  readonly question: Question;
  /** The choice made, or null for later. */
  readonly chosen: string | null;
  readonly onChoose: (choice: string | null) => void;
}

/** One question with its choices; the likelier one says so, and none is made beforehand. */
export function QuestionField({ question, chosen, onChoose }: QuestionFieldProps) {
  const id = useId();
  return (
    <fieldset className={styles.question} aria-describedby={`${id}-place`}>
      <legend>{question.question}</legend>
      <p id={`${id}-place`}>{questionPlace(question)}</p>
      <div className={styles.choices}>
        {question.choices.map((choice) => (
          <label key={choice}>
            <input type="radio" name={id} checked={chosen === choice} onChange={() => onChoose(choice)} />
            <span>
              {choice}
              {choice === question.guess && ' (likelier)'}
            </span>
          </label>
        ))}
        <label>
          <input type="radio" name={id} checked={chosen === null} onChange={() => onChoose(null)} />
          <span>Not now</span>
        </label>
      </div>
    </fieldset>
  );
}
