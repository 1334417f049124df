'use client';

import { useCallback, useMemo } from 'react';
import type { SisterRow } from '../../lib/analysis/sisters/types';
import { formatSignificant } from '../../lib/charts/format';
import { ratioHint, ratioMeasure, ratioPicture } from '../../lib/charts/ratioPicture';
import type { ChartTheme } from '../../lib/charts/theme';
import { findAt } from '../words/sisterFindings';
import { IntervalFigure } from './IntervalFigure';

interface RatioFigureProps {
  readonly rows: readonly SisterRow[];
  readonly title: string;
}

/** Every unit's wear rate against that of its sisters, fastest first. */
export function RatioFigure({ rows, title }: RatioFigureProps) {
  const measure = ratioMeasure(rows);
  const sorted = useMemo(() => {
    const middle = ({ rate }: SisterRow) =>
      measure === 'ratio' ? (rate.ratio?.median ?? 0) : rate.difference_mm_per_10kh.median;
    return [...rows].sort((a, b) => middle(b) - middle(a));
  }, [rows, measure]);
  const picture = useCallback(
    (part: readonly SisterRow[], theme: ChartTheme, narrow: boolean) =>
      ratioPicture(part, measure, findAt, theme, narrow),
    [measure],
  );
  const found = sorted.filter(({ q }) => q <= findAt).map((row) => ratioHint(row, measure));
  return (
    <IntervalFigure
      rows={sorted}
      title={title}
      series={rows[0]?.series ?? ''}
      finding={found.length === 0 ? 'No unit can be told from its sisters.' : `${found.join('. ')}.`}
      picture={picture}
    >
      {measure === 'ratio'
        ? 'Tick: the unit’s wear rate in multiples of its sisters’.'
        : 'The sisters’ own rate may be zero, so the difference is shown in place of a ratio. Tick: median.'}{' '}
      Thick bar: 80&nbsp;% interval; thin line: 95&nbsp;%. Named at the right: units that can be told from
      their sisters (q up to {formatSignificant(findAt, 2)}: one in ten of those named may be so by chance). A
      click opens the unit.
    </IntervalFigure>
  );
}
