import { defaultDecisionSettings } from '../../lib/analysis/decisions/defaultDecisionSettings';
import { NumberField } from '../frame/NumberField';

const [least_percent, most_percent] = [0.1, 99];

/** The accepted risk of the address; the usual one if it names none. */
export function acceptedRiskOf(query: URLSearchParams): number {
  const percent = Number(query.get('risk') ?? '');
  return percent >= least_percent && percent <= most_percent
    ? percent / 100
    : defaultDecisionSettings.acceptedRisk;
}

interface AcceptedRiskProps {
  readonly risk: number;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** The chance of passing a limit that is accepted before a part is fitted; kept in the address. */
export function AcceptedRisk({ risk, onChange }: AcceptedRiskProps) {
  return (
    <form className="controls" aria-label="Accepted risk" onSubmit={(event) => event.preventDefault()}>
      <NumberField
        label="Accepted risk, %"
        value={risk * 100}
        least={least_percent}
        most={most_percent}
        onValue={(text) => onChange({ risk: text })}
      />
    </form>
  );
}
