import { formatDate } from '../../lib/charts/format';
import { NumberField } from '../frame/NumberField';
import type { PlanPanelProps } from './PlanPanelProps';
import { changedPlan } from './sparesAddress';

const cleared = { wrisk: '', wservice: '', hours: '', interval: '', lead: '', moved: '', to: '' };

/** Everything of the plan that can be tried out; kept in the address. */
export function WhatIfControls({ fleet, settings, query, onChange }: PlanPanelProps) {
  const changed = changedPlan(query, settings);
  const plan = { ...settings, ...changed };
  const { hoursPerYearFactor, intervalFactor } = plan.changes;
  const moved = query.get('moved') ?? '';
  const usual = (text: string, value: number) => (Number(text) === value ? '' : text);
  return (
    <form className="controls" aria-label="Changes of the plan" onSubmit={(event) => event.preventDefault()}>
      <NumberField
        label="Accepted risk, %"
        value={plan.acceptedRisk * 100}
        least={0.1}
        most={99}
        onValue={(text) => onChange({ wrisk: usual(text, settings.acceptedRisk * 100) })}
      />
      <NumberField
        label="Service level, %"
        value={plan.serviceLevel * 100}
        least={50}
        most={99.9}
        onValue={(text) => onChange({ wservice: usual(text, settings.serviceLevel * 100) })}
      />
      <NumberField
        label="Hours a year, % of plan"
        value={hoursPerYearFactor * 100}
        least={10}
        most={300}
        onValue={(text) => onChange({ hours: usual(text, 100) })}
      />
      <NumberField
        label="Overhaul interval, % of plan"
        value={intervalFactor * 100}
        least={25}
        most={300}
        onValue={(text) => onChange({ interval: usual(text, 100) })}
      />
      <NumberField
        label="Lead times, multiplied by"
        value={plan.leadTimeFactor}
        least={0}
        most={10}
        onValue={(text) => onChange({ lead: usual(text, 1) })}
      />
      <label>
        Next overhaul of
        <select value={moved} onChange={(event) => onChange({ moved: event.target.value })}>
          <option value="">none moved</option>
          {fleet.units
            .filter(({ nextOverhaulDate }) => nextOverhaulDate !== null)
            .map(({ unit, nextOverhaulDate }) => (
              <option key={unit} value={unit}>
                {unit}, {formatDate(nextOverhaulDate)}
              </option>
            ))}
        </select>
      </label>
      {moved !== '' && (
        <label>
          moved to
          <input
            type="date"
            min={fleet.asOf}
            value={query.get('to') ?? ''}
            onChange={(event) => onChange({ to: event.target.value })}
          />
        </label>
      )}
      {changed !== null && (
        <button type="button" onClick={() => onChange(cleared)}>
          Back to the present plan
        </button>
      )}
    </form>
  );
}
