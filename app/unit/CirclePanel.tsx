'use client';

import { useCallback } from 'react';
import type { CircleSet, ClearanceCircles } from '../../lib/analysis/circle/types';
import type { FleetResult } from '../../lib/analysis/types';
import { circlePicture } from '../../lib/charts/circlePicture';
import { formatDate, formatLength } from '../../lib/charts/format';
import { useQuery } from '../address/useQuery';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { Term } from '../frame/Term';
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

/** Name of a set in the address: its overhaul and stage. */
function setName({ overhaul, stage }: CircleSet): string {
  return `${overhaul} ${stage}`;
}

/** The set that was left at the opening before: as left of an earlier date, or of the same overhaul for none. */
function leftBefore(sets: readonly CircleSet[], now: CircleSet): CircleSet | null {
  return sets.filter(({ stage, date }) => stage === 'left' && date < now.date).at(-1) ?? null;
}

function Circle({ circles, name }: { readonly circles: ClearanceCircles; readonly name: string }) {
  const { sets, noise_mm, noiseFrom } = circles;
  const [query, change] = useQuery();
  const latest = sets.findLast(({ stage }) => stage === 'found') ?? (sets.at(-1) as CircleSet);
  const now = sets.find((set) => setName(set) === query.get('circle')) ?? latest;
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
          <select value={setName(now)} onChange={(event) => change({ circle: event.target.value })}>
            {sets.map((set) => (
              <option key={setName(set)} value={setName(set)}>
                {formatDate(set.date)}, {stageWords[set.stage]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <figure className={styles.circle}>
        <figcaption>
          Gaps at the <Term name="clockPosition">clock positions</Term>, seen from the compressor end, 12
          o’clock on top. Thick grey: casing; full line: rotor at the gaps read; dashed: as left before;
          arrows: the change. The inner of the named circles is where the rotor stands at the limit of the
          largest gap, the outer at that of the smallest. Gaps are drawn to the scale of the bar, the diameter
          is not.
        </figcaption>
        <Chart build={build} label={`Clearance circle: ${name}`} description={sentence} height_px={380} />
      </figure>
      <DataTable
        caption={`Clock readings of ${name}`}
        columns={circleColumns}
        rows={sets}
        rowKey={setName}
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
