import { groupings } from '../../lib/analysis/grouping/sisterGroupOf';
import type { SistersResult } from '../../lib/analysis/sisters/types';
import type { FleetResult } from '../../lib/analysis/types';
import type { FunnelMeasure } from '../../lib/charts/funnelPicture';
import { Field } from '../frame/Field';
import { seriesName } from '../words/seriesName';

const groupingWords = {
  frame: 'frame',
  'frame+site': 'frame and site',
  'frame+duty': 'frame and duty',
} as const;

interface SisterControlsProps {
  readonly result: SistersResult;
  readonly series: string;
  /** Empty for all groups. */
  readonly group: string;
  readonly measure: FunnelMeasure;
  readonly characteristics: FleetResult['characteristics'];
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** Choice of series, of what makes sisters, and of one group; kept in the address. */
export function SisterControls({
  result,
  series,
  group,
  measure,
  characteristics,
  onChange,
}: SisterControlsProps) {
  const names = [...new Set(result.groups.map((one) => one.series))];
  const groups = result.groups.filter((one) => one.series === series).map((one) => one.group);
  return (
    <>
      <form className="controls" aria-label="What is compared" onSubmit={(event) => event.preventDefault()}>
        <Field label="Series" term="series">
          {(id) => (
            <select id={id} value={series} onChange={(event) => onChange({ series: event.target.value })}>
              {names.map((name) => (
                <option key={name} value={name}>
                  {seriesName(name, characteristics)}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field label="Sisters are units of one" term="sisterGroup">
          {(id) => (
            <select
              id={id}
              value={result.groupBy}
              onChange={(event) =>
                onChange({ by: event.target.value === 'frame' ? '' : event.target.value, in: '' })
              }
            >
              {groupings.map((one) => (
                <option key={one} value={one}>
                  {groupingWords[one]}
                </option>
              ))}
            </select>
          )}
        </Field>
        <label>
          Group
          <select value={group} onChange={(event) => onChange({ in: event.target.value })}>
            <option value="">all</option>
            {groups.map((one) => (
              <option key={one} value={one}>
                {one}
              </option>
            ))}
          </select>
        </label>
        <label>
          Compared by
          <select
            value={measure}
            onChange={(event) => onChange({ of: event.target.value === 'rate' ? '' : 'start' })}
          >
            <option value="rate">wear rate</option>
            <option value="start">start level</option>
          </select>
        </label>
      </form>
      {result.groupBy !== 'frame' && (
        <p>
          Forecasts on the other pages go on from groups by frame: smaller groups know less of their own wear.
        </p>
      )}
    </>
  );
}
