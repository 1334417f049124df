import type { AnswerDecision } from '../../lib/records/decisions/Decision';
import { ScrollBox } from '../table/ScrollBox';
import { Written } from '../table/Written';
import styles from './records.module.css';
import { TakeBackButton } from './TakeBackButton';

interface AnswersGivenProps {
  readonly answers: readonly AnswerDecision[];
  readonly busy: boolean;
  readonly onTakeBack: (ids: readonly string[]) => void;
}

/** Every answer in force, each with a button that asks its question again. */
export function AnswersGiven({ answers, busy, onTakeBack }: AnswersGivenProps) {
  if (answers.length === 0) return null;
  return (
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
          {answers.map((one) => (
            <tr key={one.id}>
              <th scope="row">
                <span className={styles.name}>
                  {one.file}
                  {one.shape !== undefined && ' and files of its shape'}
                </span>
              </th>
              <td>
                <span className={styles.name}>
                  <Written text={one.column} reason="the whole file" />
                </span>
              </td>
              <td className="text">{one.question}</td>
              <td className="value">{one.answer}</td>
              <td className="screenOnly">
                <TakeBackButton
                  ids={[one.id]}
                  of={`‘${one.answer}’ to: ${one.question}`}
                  busy={busy}
                  onTakeBack={onTakeBack}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
