import type { Conflict, Side } from '../../lib/records/workspace/mergeJournals';
import { Written } from '../table/Written';
import { aboutWords, afterWords, timeWords } from '../words/rulingWords';

interface ConflictTableProps {
  readonly conflicts: readonly Conflict[];
  readonly sideOf: (conflict: Conflict) => Side;
  readonly onChoose: (id: string, side: Side) => void;
}

const sides = [
  { side: 'ours', header: 'Here' },
  { side: 'theirs', header: 'In the workspace file' },
] as const;

/** What was decided differently here and in the workspace file, each with who and when; one of both is chosen. */
export function ConflictTable({ conflicts, sideOf, onChoose }: ConflictTableProps) {
  return (
    <div className="tableBox">
      <table>
        <caption>Decided differently: choose what holds. The later one is marked to begin with.</caption>
        <thead>
          <tr>
            <th scope="col">About</th>
            {sides.map(({ side, header }) => (
              <th key={side} scope="col">
                {header}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {conflicts.map((conflict) => {
            const about = aboutWords(conflict.ours.decision);
            return (
              <tr key={conflict.id}>
                <th scope="row">{about}</th>
                {sides.map(({ side, header }) => {
                  const { at, by } = conflict[side];
                  return (
                    <td key={side} className="text">
                      <label>
                        <input
                          type="radio"
                          name={conflict.id}
                          aria-label={`${about}: ${header}`}
                          checked={sideOf(conflict) === side}
                          onChange={() => onChoose(conflict.id, side)}
                        />{' '}
                        {afterWords(conflict[side])}
                      </label>{' '}
                      (<Written text={by} reason="no initials were given" />, {timeWords(at)})
                    </td>
                  );
                })}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
