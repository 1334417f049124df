import type { PlanPanelProps } from './PlanPanelProps';

const fields = [
  { name: 'costo', label: 'Cost of an overhaul, without parts' },
  { name: 'coste', label: 'Cost of a limit passed in service' },
];

/** Optional costs of an overhaul and of a limit passed in service, in one currency. */
export function IntervalCostFields({ query, onChange }: Pick<PlanPanelProps, 'query' | 'onChange'>) {
  return (
    <form className="controls" aria-label="Costs" onSubmit={(event) => event.preventDefault()}>
      {fields.map(({ name, label }) => (
        <label key={name}>
          {label}
          <input
            type="number"
            min={0}
            step="any"
            value={query.get(name) ?? ''}
            onChange={(event) => onChange({ [name]: event.target.value })}
          />
        </label>
      ))}
      <label>
        Currency, as in parts.csv
        <input
          size={8}
          value={query.get('currency') ?? ''}
          onChange={(event) => onChange({ currency: event.target.value })}
        />
      </label>
    </form>
  );
}
