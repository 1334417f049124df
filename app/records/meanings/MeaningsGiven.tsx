import { group } from 'd3-array';
import type { MeaningDecision } from '../../../lib/records/decisions/Decision';
import { ScrollBox } from '../../table/ScrollBox';
import { saidWords } from '../../words/columnWords';
import { counted } from '../../words/counted';
import { TakeBackButton } from '../TakeBackButton';
import styles from './meanings.module.css';

interface MeaningsGivenProps {
  readonly meanings: readonly MeaningDecision[];
  readonly busy: boolean;
  readonly onTakeBack: (ids: readonly string[]) => void;
}

/** Every column meaning in force, a shape of sheet together, with a button that takes them back. */
export function MeaningsGiven({ meanings, busy, onTakeBack }: MeaningsGivenProps) {
  if (meanings.length === 0) return null;
  return (
    <ScrollBox labelledBy="meanings-caption">
      <table>
        <caption id="meanings-caption">
          Column meanings in force; they hold for every file of the same shape
        </caption>
        <thead>
          <tr>
            <th scope="col">Said on</th>
            <th scope="col">Columns</th>
            <th scope="col" className="screenOnly">
              Change
            </th>
          </tr>
        </thead>
        <tbody>
          {[...group(meanings, ({ shape }) => shape)].map(([shape, said]) => (
            <tr key={shape}>
              <th scope="row">
                <span className={styles.name}>{[...new Set(said.map(({ file }) => file))].join(', ')}</span>
              </th>
              <td className="text">
                <ul className={styles.outcome}>
                  {said.map((meaning) => (
                    <li key={meaning.id}>
                      ‘{meaning.column}’: {saidWords(meaning)}
                    </li>
                  ))}
                </ul>
              </td>
              <td className="screenOnly">
                <TakeBackButton
                  ids={said.map(({ id }) => id)}
                  of={`${counted(said.length, 'column meaning')} said on ${said[0]?.file ?? ''}`}
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
