'use client';

import type { Problem } from '../../../lib/analysis/types';
import type { RulingDecision } from '../../../lib/records/decisions/Decision';
import { tablesPage } from '../../../lib/records/decisions/tableEdits';
import { counted } from '../../words/counted';
import { ruledSentence } from '../../words/rulingWords';
import { HeldForm } from './HeldForm';
import styles from './held.module.css';
import { useFocusBack } from './useFocusBack';
import { useInitials } from './useInitials';
import type { Rulings } from './useRulings';

interface RulingBarProps {
  readonly rulings: Rulings;
  /** Problems that pass the filters. */
  readonly shown: readonly Problem[];
  readonly busy: boolean;
  readonly onApply: (rulings: readonly RulingDecision[]) => void;
}

/** One ruling for all ticked rows, the initials, and the button that applies what was ruled. */
export function RulingBar({ rulings, shown, busy, onApply }: RulingBarProps) {
  const [initials, sign] = useInitials();
  const { selected, made } = rulings;
  const applier = useFocusBack<HTMLButtonElement>(selected.size > 0);
  const held = shown.filter(({ action, file }) => action === 'held' && file !== tablesPage);
  const apply = () => onApply([...made.values()].map((one) => ({ ...one, by: initials.trim() })));
  return (
    <div className={styles.bar}>
      <p className="buttons">
        <button type="button" disabled={held.length === 0} onClick={() => rulings.select(held, true)}>
          Select all {counted(held.length, 'held row or cell', 'held rows and cells')} listed
        </button>
        <button
          type="button"
          disabled={selected.size === 0}
          onClick={() => rulings.select([...selected.values()], false)}
        >
          Select none
        </button>
      </p>
      {selected.size > 0 && (
        <HeldForm
          problems={[...selected.values()]}
          line={null}
          onRule={(ruled) => rulings.rule([...selected.values()], ruled)}
        />
      )}
      <div className="controls">
        <label>
          Your initials
          <input value={initials} maxLength={20} size={8} onChange={(event) => sign(event.target.value)} />
        </label>
        <button ref={applier} type="button" disabled={busy || made.size === 0} onClick={apply}>
          Apply {counted(made.size, 'ruling')}
        </button>
        <button type="button" disabled={made.size === 0} onClick={rulings.putAllBack}>
          Put all back
        </button>
      </div>
      <p role="status">{ruledSentence(made.size, selected.size)}</p>
    </div>
  );
}
