'use client';

import { useRouter } from 'next/navigation';
import { useCallback } from 'react';
import type { SisterFunnel } from '../../lib/analysis/sisters/types';
import { type FunnelMeasure, funnelPicture } from '../../lib/charts/funnelPicture';
import { unitAddress } from '../address/unitAddress';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { counted } from '../words/counted';
import { namesWords } from '../words/namesWords';

/** Units that the finding names; the picture and its table have them all. */
const mostNamed = 12;

interface FunnelFigureProps {
  readonly funnel: SisterFunnel;
  readonly measure: FunnelMeasure;
  readonly title: string;
}

/** The funnel of a group, with what it shows in a sentence. */
export function FunnelFigure({ funnel, measure, title }: FunnelFigureProps) {
  const router = useRouter();
  const build = useCallback<BuildSpec>(
    (theme, narrow) => funnelPicture(funnel, measure, theme, narrow),
    [funnel, measure],
  );
  const known = funnel.units.filter((unit) => unit.reason === null);
  if (known.length === 0)
    return (
      <p>
        No unit has a {measure === 'rate' ? 'wear rate' : 'start level'} of its own: that needs two readings
        at different run hours in one run.
      </p>
    );
  const outside = known
    .filter((unit) => unit.reason === null && unit.outside !== 'none')
    .map(({ unit }) => unit);
  const missing = funnel.units.length - known.length;
  const finding =
    outside.length === 0
      ? `All ${counted(known.length, 'unit')} lie within the limits: none is further out than sisters are among themselves.`
      : `${namesWords(outside, mostNamed)} ${outside.length === 1 ? 'lies' : 'lie'} further out than sisters are among themselves. Of ${counted(known.length, 'unit')}, one in twenty lies outside the dashed limits by chance, one in five hundred outside the full ones.`;
  return (
    <figure>
      <figcaption>
        <h3>By its own readings alone</h3>
        <p>
          {finding}{' '}
          {missing > 0 &&
            `${counted(missing, 'unit')} ${missing === 1 ? 'has' : 'have'} too few readings to be drawn.`}
        </p>
      </figcaption>
      <Chart
        build={build}
        label={title}
        description={finding}
        height_px={300}
        onPick={(unit) => router.push(unitAddress(unit, null))}
      />
    </figure>
  );
}
