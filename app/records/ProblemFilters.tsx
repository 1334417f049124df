import type { Problem } from '../../lib/analysis/types';
import { compareValues } from '../table/compareValues';

/** What is looked at among the held and interpreted rows; empty for all. */
export interface ProblemFilter {
  readonly file: string;
  readonly action: string;
  readonly column: string;
  /** Text to be found in the reason. */
  readonly reason: string;
}

/** Value of the column filter for whole lines, whose column is empty. */
const wholeLine = '(the whole line)';

/** The problems that pass a filter. */
export function filtered(problems: readonly Problem[], filter: ProblemFilter): readonly Problem[] {
  const wanted = filter.reason.trim().toLowerCase();
  return problems.filter(
    ({ file, action, column, reason }) =>
      (filter.file === '' || file === filter.file) &&
      (filter.action === '' || action === filter.action) &&
      (filter.column === '' || (column === '' ? wholeLine : column) === filter.column) &&
      (wanted === '' || reason.toLowerCase().includes(wanted)),
  );
}

/** The different values of a column of problems, in reading order. */
export function valuesOf(
  problems: readonly Problem[],
  value: (problem: Problem) => string,
): readonly string[] {
  return [...new Set(problems.map(value))].sort(compareValues);
}

interface ProblemFiltersProps {
  readonly files: readonly string[];
  readonly columns: readonly string[];
  readonly filter: ProblemFilter;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** What is looked at: file, column, what was done, and a text in the reason. */
export function ProblemFilters({ files, columns, filter, onChange }: ProblemFiltersProps) {
  return (
    <form className="controls" aria-label="Filters" onSubmit={(event) => event.preventDefault()}>
      <Choice label="File" value={filter.file} choices={files} onChoose={(file) => onChange({ file })} />
      <Choice
        label="What was done"
        value={filter.action}
        choices={['held', 'interpreted']}
        onChoose={(action) => onChange({ action })}
      />
      <Choice
        label="Column"
        value={filter.column}
        choices={columns.map((column) => (column === '' ? wholeLine : column))}
        onChoose={(column) => onChange({ column })}
      />
      <label>
        Text in the reason
        <input
          type="search"
          value={filter.reason}
          onChange={(event) => onChange({ reason: event.target.value })}
        />
      </label>
    </form>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly string[];
  readonly onChoose: (choice: string) => void;
}

function Choice({ label, value, choices, onChoose }: ChoiceProps) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => onChoose(event.target.value)}>
        <option value="">all</option>
        {choices.map((choice) => (
          <option key={choice} value={choice}>
            {choice}
          </option>
        ))}
      </select>
    </label>
  );
}
