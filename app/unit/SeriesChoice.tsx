import type { FleetResult, UnitSeries } from '../../lib/analysis/types';
import { seriesName } from '../words/seriesName';
import styles from './unit.module.css';

interface SeriesChoiceProps {
  readonly series: readonly UnitSeries[];
  readonly characteristics: FleetResult['characteristics'];
  readonly chosen: string;
  readonly onChoose: (series: string) => void;
}

function hasLimit(series: UnitSeries): boolean {
  return series.margins.some((margin) => margin.limit_mm !== null);
}

/** Choice of one of the unit's series; those without a limit say so. */
export function SeriesChoice({ series, characteristics, chosen, onChoose }: SeriesChoiceProps) {
  // Those with a limit first: they carry the verdicts.
  const inOrder = [...series.filter(hasLimit), ...series.filter((one) => !hasLimit(one))];
  return (
    <fieldset className={styles.choice}>
      <legend className="visuallyHidden">Series</legend>
      {inOrder.map((one) => (
        <button
          key={one.series}
          type="button"
          aria-pressed={one.series === chosen}
          onClick={() => onChoose(one.series)}
        >
          {seriesName(one.series, characteristics)}
          {!hasLimit(one) && <span className={styles.aside}> no limit</span>}
        </button>
      ))}
    </fieldset>
  );
}
