'use client';

import { useRouter } from 'next/navigation';
import { useMemo } from 'react';
import type { SisterRow } from '../../lib/analysis/sisters/types';
import { ratioHint, ratioMeasure, ratioPicture } from '../../lib/charts/ratioPicture';
import { unitAddress } from '../address/unitAddress';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { Pager } from '../frame/Pager';
import { usePaged } from '../frame/usePaged';
import { findAt } from '../words/sistersSentence';

const rowsPerPicture = 60;
const rowsPerPaper = 30;

/** Every unit's wear rate against that of its sisters, fastest first, at most 60 to a picture. */
export function RatioFigure({
  rows,
  title,
}: {
  readonly rows: readonly SisterRow[];
  readonly title: string;
}) {
  const router = useRouter();
  const measure = ratioMeasure(rows);
  const sorted = useMemo(() => {
    const middle = ({ rate }: SisterRow) =>
      measure === 'ratio' ? (rate.ratio?.median ?? 0) : rate.difference_mm_per_10kh.median;
    return [...rows].sort((a, b) => middle(b) - middle(a));
  }, [rows, measure]);
  const { first, shown, onPage } = usePaged(sorted, rowsPerPicture);
  const { build, onPaper } = useMemo(() => {
    const of =
      (part: readonly SisterRow[]): BuildSpec =>
      (theme, narrow) =>
        ratioPicture(part, measure, findAt, theme, narrow);
    const papers = Array.from({ length: Math.ceil(shown.length / rowsPerPaper) }, (_, index) =>
      of(shown.slice(index * rowsPerPaper, (index + 1) * rowsPerPaper)),
    );
    return { build: of(shown), onPaper: papers };
  }, [shown, measure]);
  const found = sorted.filter(({ q }) => q <= findAt).map((row) => ratioHint(row, measure));
  return (
    <figure>
      <figcaption>
        <h3>Against its sisters</h3>
        <p>
          {measure === 'ratio'
            ? 'Tick: the unit’s wear rate in multiples of its sisters’.'
            : 'The sisters’ own rate may be zero, so the difference is shown in place of a ratio. Tick: median.'}{' '}
          Thick bar: 80&nbsp;% interval; thin line: 95&nbsp;%. Named at the right: units that can be told from
          their sisters (q up to {findAt}: one in ten of those named may be so by chance). A click opens the
          unit.
        </p>
      </figcaption>
      <Chart
        build={build}
        onPaper={onPaper}
        label={title}
        description={found.length === 0 ? 'No unit can be told from its sisters.' : `${found.join('. ')}.`}
        height_px={shown.length * 22 + 50}
        onPick={(unit) => router.push(unitAddress(unit, rows[0]?.series ?? null))}
      />
      <Pager
        first={first}
        shown={shown.length}
        total={sorted.length}
        step={rowsPerPicture}
        noun="unit"
        onPage={onPage}
      />
    </figure>
  );
}
