import type { MeaningDecision } from '../../../lib/records/decisions/Decision';
import { ScrollBox } from '../../table/ScrollBox';
import { saidWords } from '../../words/columnWords';
import { counted } from '../../words/counted';
import styles from './meanings.module.css';

interface MeaningsGivenProps {
  readonly meanings: readonly MeaningDecision[];
  readonly busy: boolean;
  readonly onTakeBack: (ids: readonly string[]) => void;
}

/** Meanings by the shape of sheet that they hold for, in order of first decision. */
function byShape(meanings: readonly MeaningDecision[]): readonly (readonly MeaningDecision[])[] {
  const groups = new Map<string, MeaningDecision[]>();
  for (const meaning of meanings) groups.set(meaning.shape, [...(groups.get(meaning.shape) ?? []), meaning]);
  return [...groups.values()];
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
          {byShape(meanings).map((group) => (
            <tr key={group[0]?.shape}>
              <th scope="row">
                <span className={styles.name}>{[...new Set(group.map(({ file }) => file))].join(', ')}</span>
              </th>
              <td className="text">
                <ul className={styles.outcome}>
                  {group.map((meaning) => (
                    <li key={meaning.id}>
                      ‘{meaning.column}’: {saidWords(meaning)}
                    </li>
                  ))}
                </ul>
              </td>
              <td className="screenOnly">
                <button type="button" disabled={busy} onClick={() => onTakeBack(group.map(({ id }) => id))}>
                  Take back
                  <span className="visuallyHidden">
                    {` ${counted(group.length, 'column meaning')} said on ${group[0]?.file ?? ''}`}
                  </span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
