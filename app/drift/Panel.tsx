'use client';

import { useCallback } from 'react';
import { controlPanel, type PanelInput } from '../../lib/charts/controlPanel';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { counted } from '../words/counted';

interface PanelProps {
  readonly input: PanelInput;
  readonly heading: string;
}

/** One control chart with its heading; keep the input stable. */
export function Panel({ input, heading }: PanelProps) {
  const build = useCallback<BuildSpec>((theme, narrow) => controlPanel(input, theme, narrow), [input]);
  const outside = input.points.filter((point) => point.outside).map(({ hint }) => hint);
  if (input.points.length === 0) return null;
  return (
    <figure>
      <figcaption>
        <h3>{heading}</h3>
      </figcaption>
      <Chart
        build={build}
        label={heading}
        description={
          outside.length === 0
            ? `None of ${counted(input.points.length, 'point')} lies outside.`
            : `Outside: ${outside.join('; ')}.`
        }
        height_px={170}
      />
    </figure>
  );
}
