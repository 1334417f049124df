'use client';

import type { DriftResult } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatFixed } from '../../lib/charts/format';
import { Field } from '../frame/Field';
import { chartWords, ruleWords } from '../words/driftSentence';
import { seriesName } from '../words/seriesName';
import { BudgetField } from './BudgetField';
import styles from './drift.module.css';
import { allCharts, allRules, listText, usualBudget_per_year } from './driftAddress';

interface DriftControlsProps {
  readonly result: DriftResult;
  readonly series: string;
  readonly known: readonly string[];
  readonly characteristics: FleetResult['characteristics'];
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

function toggled<T>(list: readonly T[], one: T, order: readonly T[]): readonly T[] {
  return order.filter((other) => (other === one ? !list.includes(other) : list.includes(other)));
}

/** Series shown, the budget of false signals, charts and run rules in force; kept in the address. */
export function DriftControls({ result, series, known, characteristics, onChange }: DriftControlsProps) {
  const { budget_per_year, charts, rules } = result.settings;
  const costOf = (rule: string) => result.ruleCosts.find((one) => one.rule === rule)?.expected_per_year;
  return (
    <form className="controls" aria-label="What is watched" onSubmit={(event) => event.preventDefault()}>
      <Field label="Series" term="series">
        {(id) => (
          <select
            id={id}
            value={series}
            onChange={(event) => onChange({ series: event.target.value, unit: '' })}
          >
            {known.map((name) => (
              <option key={name} value={name}>
                {seriesName(name, characteristics)}
              </option>
            ))}
          </select>
        )}
      </Field>
      <BudgetField
        budget_per_year={budget_per_year}
        onChange={(budget) => onChange({ budget: budget === usualBudget_per_year ? '' : String(budget) })}
      />
      <fieldset className={styles.checks}>
        <legend>Charts in force</legend>
        {allCharts.map((chart) => (
          <label key={chart}>
            <input
              type="checkbox"
              checked={charts.includes(chart)}
              disabled={charts.length === 1 && charts.includes(chart)}
              onChange={() => onChange({ charts: listText(toggled(charts, chart, allCharts), allCharts) })}
            />{' '}
            {chartWords[chart]}
          </label>
        ))}
      </fieldset>
      <details open={rules.length > 0}>
        <summary>Run rules of ISO 7870-2</summary>
        <fieldset className={styles.checks}>
          <legend>Off unless chosen; each adds its own false signals to the budget.</legend>
          {allRules.map((rule) => (
            <label key={rule}>
              <input
                type="checkbox"
                checked={rules.includes(rule)}
                onChange={() => onChange({ rules: listText(toggled(rules, rule, allRules), []) })}
              />{' '}
              {ruleWords[rule]}
              {costOf(rule) !== undefined && `: ${formatFixed(costOf(rule) ?? null, 1)} a year by chance`}
            </label>
          ))}
        </fieldset>
      </details>
    </form>
  );
}
