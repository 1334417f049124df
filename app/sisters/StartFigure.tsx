'use client';

import { useCallback, useMemo } from 'react';
import type { StartRow } from '../../lib/analysis/sisters/types';
import { formatSignificant } from '../../lib/charts/format';
import { startHint, startPicture } from '../../lib/charts/startPicture';
import type { ChartTheme } from '../../lib/charts/theme';
import { findAt } from '../words/sisterFindings';
import { IntervalFigure } from './IntervalFigure';

interface StartFigureProps {
  readonly rows: readonly StartRow[];
  readonly title: string;
}

/** Every unit's own start level against that of its sisters, highest first. */
export function StartFigure({ rows, title }: StartFigureProps) {
  const sorted = useMemo(() => [...rows].sort((a, b) => b.difference_mm - a.difference_mm), [rows]);
  const picture = useCallback(
    (part: readonly StartRow[], theme: ChartTheme, narrow: boolean) =>
      startPicture(part, findAt, theme, narrow),
    [],
  );
  const found = sorted.filter(({ q }) => q <= findAt).map(startHint);
  return (
    <IntervalFigure
      rows={sorted}
      title={title}
      series={rows[0]?.series ?? ''}
      finding={
        found.length === 0
          ? 'No unit starts further out than sisters do among themselves.'
          : `${found.join('. ')}.`
      }
      picture={picture}
    >
      Tick: the unit’s own start level, from its own readings alone, less its sisters’. Thick bar: 80&nbsp;%
      interval; thin line: 95&nbsp;%. Sisters start at different levels, so an interval off the line is usual:
      named at the right are those further out than sisters are among themselves (q up to{' '}
      {formatSignificant(findAt, 2)}). A click opens the unit.
    </IntervalFigure>
  );
}
