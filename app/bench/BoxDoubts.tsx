import type { BoxCheck } from '../../lib/analysis/bench/types';
import type { LengthUnit } from '../../lib/records/lengthUnits';
import { doubtWords } from '../words/benchWords';
import styles from './bench.module.css';

interface BoxDoubtsProps {
  readonly check: BoxCheck;
  readonly uom: LengthUnit;
  /** It was measured again and stands. */
  readonly stands: boolean;
  /** Takes a suggestion in place of what was typed. */
  readonly onTake: (text: string) => void;
  readonly onStands: () => void;
}

/** Why a typed reading is questioned, and what to do next; nothing is changed unless it is pressed. */
export function BoxDoubts({ check, uom, stands, onTake, onStands }: BoxDoubtsProps) {
  if (check.unreadable !== null) {
    return (
      <p className={styles.doubt}>
        This is read as no reading: {check.unreadable}. Type one number such as 0.31 or 0,31, or an interval
        such as 0.40-0.45 or &gt;0.40. As it stands it goes to the remarks.
      </p>
    );
  }
  return check.doubts.map((doubt) => {
    const { reason, next, suggestion } = doubtWords(doubt, check, uom);
    if (stands) {
      return (
        <p key={doubt.kind} className={styles.muted}>
          {reason} Measured again: it stands.
        </p>
      );
    }
    return (
      <div key={doubt.kind} className={styles.doubt}>
        <p>
          {reason} <strong>{next}</strong>
        </p>
        <p className="buttons">
          {suggestion !== null && (
            <button type="button" onClick={() => onTake(suggestion)}>
              Take {suggestion}
            </button>
          )}
          <button type="button" onClick={onStands}>
            Measured again, it stands
          </button>
        </p>
      </div>
    );
  });
}
