import type { UnitCharts } from '../../lib/analysis/drift/types';
import { formatMm } from '../../lib/charts/format';
import { counted } from '../words/counted';

interface MovingRangeControlsProps {
  readonly charts: UnitCharts;
  readonly baseline: number | null;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** Stage and baseline of the moving-range chart, and what its limits come from. */
export function MovingRangeControls({ charts, baseline, onChange }: MovingRangeControlsProps) {
  const { stage, chart, readings } = charts.movingRange;
  return (
    <>
      <div className="controls">
        <label>
          Stage
          <select
            value={stage}
            onChange={(event) => onChange({ stage: event.target.value === 'found' ? '' : 'left' })}
          >
            <option value="found">as found</option>
            <option value="left">as left</option>
          </select>
        </label>
        <label>
          Limits from the first
          <input
            type="number"
            min={2}
            max={Math.max(2, readings.length)}
            value={baseline ?? chart?.baseline ?? ''}
            onChange={(event) => onChange({ base: event.target.value })}
          />
        </label>
      </div>
      {chart !== null && (
        <p>
          Limits from {counted(chart.baseline, 'reading')}: mean moving range{' '}
          {formatMm(chart.meanMovingRange)}, its limit {formatMm(chart.movingRangeUpper)}
          {chart.rangeSignals.length > 0 && `; ${counted(chart.rangeSignals.length, 'range')} above it`}. A
          chart of readings that wear says little: the charts above allow for the wear.
        </p>
      )}
    </>
  );
}
