import type { SparesSettings } from '../../lib/analysis/demand/types';
import { NumberField } from '../frame/NumberField';
import { Term } from '../frame/Term';

interface SparesControlsProps {
  readonly settings: SparesSettings;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** Accepted risk, service level and review period of the present plan; kept in the address. */
export function SparesControls({ settings, onChange }: SparesControlsProps) {
  const { acceptedRisk, serviceLevel, reviewPeriod_weeks } = settings;
  return (
    <>
      <form className="controls" aria-label="Plan" onSubmit={(event) => event.preventDefault()}>
        <NumberField
          label="Accepted risk, %"
          value={acceptedRisk * 100}
          least={0.1}
          most={99}
          onValue={(text) => onChange({ risk: text })}
        />
        <NumberField
          label="Service level, %"
          value={serviceLevel * 100}
          least={50}
          most={99.9}
          onValue={(text) => onChange({ service: text })}
        />
        <NumberField
          label="Weeks between stock reviews"
          value={reviewPeriod_weeks}
          least={0}
          most={104}
          onValue={(text) => onChange({ review: text })}
        />
      </form>
      <p>
        The accepted risk is the largest <Term name="chance">chance</Term> of passing a{' '}
        <Term name="limit">limit</Term> before an <Term name="overhaul">overhaul</Term> that is lived with.
      </p>
    </>
  );
}
