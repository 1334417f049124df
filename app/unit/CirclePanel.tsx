'use client';

import { useCallback, useState } from 'react';
import type { CircleSet, ClearanceCircles } from '../../lib/analysis/circle/types';
import type { FleetResult } from '../../lib/analysis/types';
import { circlePicture } from '../../lib/charts/circlePicture';
import { formatLength } from '../../lib/charts/format';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { DataTable } from '../table/DataTable';
import { circleSentence } from '../words/circleWords';
import { circleColumns } from './circleColumns';
import styles from './unit.module.css';

interface CirclePanelProps {
  readonly fleet: FleetResult;
  readonly unit: string;
  readonly characteristic: string;
  readonly name: string;
}

const stageWords = { found: 'as found', left: 'as left' } as const;

/** The set that was left at the opening before: as left of an earlier date, or of the same overhaul for none. */
function leftBefore(sets: readonly CircleSet[], now: CircleSet): CircleSet | null {
  return sets.filter(({ stage, date }) => stage === 'left' && date < now.date).at(-1) ?? null;
}

function Circle({ circles, name }: { readonly circles: ClearanceCircles; readonly name: string }) {
  const { sets, noise_mm, noiseFrom } = circles;
  const latest = sets.findLastIndex(({ stage }) => stage === 'found');
  const [chosen, setChosen] = useState(latest < 0 ? sets.length - 1 : latest);
  const now = sets[chosen] ?? (sets[0] as CircleSet);
  const before = leftBefore(sets, now);
  const build = useCallback<BuildSpec>(
    (theme, narrow) => circlePicture(circles, before, now, theme, narrow),
    [circles, before, now],
  );
  const sentence = circleSentence(circles, before, now);
  return (
    <>
      <p>{sentence}</p>
      <p>
        {noise_mm === null
          ? 'How uncertain this is cannot be said: the group has no fit of the mean, and no pairs of readings of one state.'
          : `± is one standard deviation from a noise of ${formatLength(noise_mm)} mm of one reading (${noiseFrom === 'fit' ? 'from the fit of the mean' : 'from pairs of readings of one state'}).`}
      </p>
      <div className="controls">
        <label>
          Readings shown
          <select value={chosen} onChange={(event) => setChosen(Number(event.target.value))}>
            {sets.map(({ overhaul, date, stage }, index) => (
              <option key={`${overhaul} ${stage}`} value={index}>
                {date}, {stageWords[stage]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <figure className={styles.circle}>
        <figcaption>
          Seen from the compressor end, 12 o’clock on top. Thick grey: casing; full line: rotor at the gaps
          read; dashed: as left before; blue: the change; accent: limits of the largest and smallest gap. Gaps
          are drawn to the scale of the bar, far larger than the diameter.
        </figcaption>
        <Chart build={build} label={`Clearance circle: ${name}`} description={sentence} height_px={380} />
      </figure>
      <DataTable
        caption={`Clock readings of ${name}`}
        columns={circleColumns}
        rows={sets}
        rowKey={({ overhaul, stage }) => `${overhaul} ${stage}`}
        empty="There are no clock readings."
      />
    </>
  );
}

/** The clearance circle of a characteristic read at clock positions; nothing where it has no clock readings. */
export function CirclePanel({ fleet, unit, characteristic, name }: CirclePanelProps) {
  const asked = useAsked(fleet, 'circles', unit, characteristic);
  return (
    <WithAnswer asked={asked}>
      {(circles) =>
        circles.sets.length === 0 ? null : (
          <section aria-label="Clearance circle">
            <h3>Clearance circle</h3>
            <Circle key={`${unit} ${characteristic}`} circles={circles} name={name} />
          </section>
        )
      }
    </WithAnswer>
  );
}
