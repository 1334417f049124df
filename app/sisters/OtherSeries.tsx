import type { SistersResult } from '../../lib/analysis/sisters/types';
import type { FleetResult } from '../../lib/analysis/types';
import type { FunnelMeasure } from '../../lib/charts/funnelPicture';
import { seriesName } from '../words/seriesName';
import { otherFindings } from '../words/sistersSentence';

interface OtherSeriesProps {
  readonly result: SistersResult;
  readonly series: string;
  readonly measure: FunnelMeasure;
  readonly characteristics: FleetResult['characteristics'];
  readonly onSeries: (changes: Readonly<Record<string, string>>) => void;
}

/** What the other series found furthest from its sisters, each a way to that series. */
export function OtherSeries({ result, series, measure, characteristics, onSeries }: OtherSeriesProps) {
  const others = otherFindings(result, series, measure);
  if (others.length === 0) return null;
  return (
    <details>
      <summary>
        {others.length === 1
          ? 'One other series has a finding'
          : `${others.length} other series have findings`}
      </summary>
      <ul>
        {others.map((other) => (
          <li key={other.series}>
            <button type="button" onClick={() => onSeries({ series: other.series, in: '' })}>
              {seriesName(other.series, characteristics)}
            </button>{' '}
            {other.words}
          </li>
        ))}
      </ul>
    </details>
  );
}
