import type { ColumnMeaning, UnderstoodSheet } from '../../../lib/analysis/types';
import { clockPositions } from '../../../lib/records/characteristics';
import { columnRole, columnRoles, partsOf } from '../../../lib/records/intake/columnRoles';
import { lengthUnits } from '../../../lib/records/lengthUnits';
import { roleWords, uomWords } from '../../words/columnWords';
import styles from './meanings.module.css';
import type { Said } from './useMeaningEdits';

interface MeaningSelectsProps {
  readonly column: ColumnMeaning;
  readonly said: Said;
  readonly characteristics: UnderstoodSheet['characteristics'];
  readonly onSay: (said: Said) => void;
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  /** What is shown where nothing is chosen; no such choice if null. */
  readonly none: string | null;
  readonly choices: readonly (readonly [value: string, words: string])[];
  readonly onChoose: (value: string | null) => void;
}

function Choice({ label, value, none, choices, onChoose }: ChoiceProps) {
  return (
    <select aria-label={label} value={value} onChange={(event) => onChoose(event.target.value || null)}>
      {none !== null && <option value="">{none}</option>}
      {choices.map(([choice, words]) => (
        <option key={choice} value={choice}>
          {words}
        </option>
      ))}
    </select>
  );
}

/** What a column is read as, to be chosen: its role, and of a reading what was measured, when, where and in what unit. */
export function MeaningSelects({ column, said, characteristics, onSay }: MeaningSelectsProps) {
  const name = column.name === '' ? `column ${column.index + 1}` : column.name;
  const takes = partsOf(said.role);
  const measured = characteristics.find(({ code }) => code === said.characteristic);
  return (
    <span className={styles.selects}>
      <Choice
        label={`${name}: read as`}
        value={said.role}
        none={null}
        choices={columnRoles.map((role) => [role, roleWords(role)])}
        onChoose={(role) => onSay({ ...said, role: columnRole(role ?? '') ?? 'unused' })}
      />
      {takes.includes('characteristic') && (
        <Choice
          label={`${name}: characteristic`}
          value={said.characteristic ?? ''}
          none={said.role === 'value' ? 'as its row says' : 'which characteristic?'}
          choices={characteristics.map(({ code, name: words }) => [code, words])}
          onChoose={(characteristic) => onSay({ ...said, characteristic })}
        />
      )}
      {takes.includes('stage') && (
        <Choice
          label={`${name}: as found or as left`}
          value={said.stage ?? ''}
          none={said.role === 'value' ? 'stage as its row says' : 'found or left not said'}
          choices={[
            ['found', 'as found'],
            ['left', 'as left'],
          ]}
          onChoose={(stage) =>
            onSay({ ...said, stage: stage === 'found' || stage === 'left' ? stage : null })
          }
        />
      )}
      {takes.includes('clock') && measured?.shape !== 'single' && (
        <Choice
          label={`${name}: clock position`}
          value={said.clock ?? ''}
          none={said.role === 'value' ? 'position as its row says' : 'clock position not said'}
          choices={clockPositions.map((clock) => [clock, `${clock} o’clock`])}
          onChoose={(chosen) =>
            onSay({ ...said, clock: clockPositions.find((one) => one === chosen) ?? null })
          }
        />
      )}
      {takes.includes('uom') && (
        <Choice
          label={`${name}: unit of measure`}
          value={said.uom ?? ''}
          none="unit of measure not said"
          choices={lengthUnits.map((unit) => [unit, uomWords(unit)])}
          onChoose={(chosen) => onSay({ ...said, uom: lengthUnits.find((unit) => unit === chosen) ?? null })}
        />
      )}
    </span>
  );
}
