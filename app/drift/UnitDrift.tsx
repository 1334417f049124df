'use client';

import Link from 'next/link';
import type { DriftSettings } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { unitAddress } from '../address/unitAddress';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { UnitPicker } from '../unit/UnitPicker';
import { seriesName } from '../words/seriesName';
import { UnitPanels } from './UnitPanels';

/** Id of the section, which takes the focus when a unit is shown from afar. */
export const unitChartsId = 'unit-charts';

interface UnitDriftProps {
  readonly fleet: FleetResult;
  readonly settings: DriftSettings;
  readonly series: string;
  readonly unit: string;
  readonly query: URLSearchParams;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** Baseline from the address; the usual one if it is no count of 2 or more. */
function baselineOf(text: string | null): number | null {
  const count = Number(text);
  return Number.isInteger(count) && count >= 2 ? count : null;
}

/** One unit's charts, large. */
export function UnitDrift({ fleet, settings, series, unit, query, onChange }: UnitDriftProps) {
  const stage = query.get('stage') === 'left' ? 'left' : 'found';
  const baseline = baselineOf(query.get('base'));
  const asked = useAsked(fleet, 'unitCharts', unit, series, settings, stage, baseline);
  const title = `${unit === '' ? 'One unit' : unit}: ${seriesName(series, fleet.characteristics)}`;
  return (
    <section aria-label={title} id={unitChartsId} tabIndex={-1}>
      <h2>{title}</h2>
      <UnitPicker fleet={fleet} id={unit} onPick={(name) => onChange({ unit: name, series })} />
      {unit === '' ? (
        <p>Choose a unit, here or in the picture above.</p>
      ) : (
        <WithAnswer asked={asked}>
          {(charts) =>
            charts === null ? (
              <p>{unit} has no reading of this series that can be compared with a forecast.</p>
            ) : (
              <UnitPanels charts={charts} baseline={baseline} onChange={onChange} />
            )
          }
        </WithAnswer>
      )}
      {unit !== '' && (
        <p>
          <Link href={unitAddress(unit, series)}>{unit} on the Unit page</Link>
        </p>
      )}
    </section>
  );
}
