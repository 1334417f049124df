'use client';

import { useRouter } from 'next/navigation';
import { type ReactNode, useMemo } from 'react';
import type { ChartTheme, LayeredSpec } from '../../lib/charts/theme';
import { unitIntervalsHeight_px } from '../../lib/charts/unitIntervals';
import { unitAddress } from '../address/unitAddress';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { Pager } from '../frame/Pager';
import { usePaged } from '../frame/usePaged';

const rowsPerPicture = 60;
const rowsPerPaper = 30;

interface IntervalFigureProps<Row> {
  readonly rows: readonly Row[];
  readonly title: string;
  readonly series: string;
  /** What those found unlike say, for those who cannot see the picture. */
  readonly finding: string;
  /** Makes the picture of some rows; kept by the caller, since a new one draws anew. */
  readonly picture: (rows: readonly Row[], theme: ChartTheme, narrow: boolean) => LayeredSpec;
  readonly children: ReactNode;
}

/** Every unit's value with its intervals in the order given, at most 60 to a picture; a click opens the unit. */
export function IntervalFigure<Row>({
  rows,
  title,
  series,
  finding,
  picture,
  children,
}: IntervalFigureProps<Row>) {
  const router = useRouter();
  const { first, shown, onPage } = usePaged(rows, rowsPerPicture);
  const { build, onPaper } = useMemo(() => {
    const of =
      (part: readonly Row[]): BuildSpec =>
      (theme, narrow) =>
        picture(part, theme, narrow);
    const papers = Array.from({ length: Math.ceil(shown.length / rowsPerPaper) }, (_, index) =>
      of(shown.slice(index * rowsPerPaper, (index + 1) * rowsPerPaper)),
    );
    return { build: of(shown), onPaper: papers };
  }, [shown, picture]);
  return (
    <figure>
      <figcaption>
        <h3>Against its sisters</h3>
        <p>{children}</p>
      </figcaption>
      <Chart
        build={build}
        onPaper={onPaper}
        label={title}
        description={finding}
        height_px={unitIntervalsHeight_px(shown.length)}
        onPick={(unit) => router.push(unitAddress(unit, series))}
      />
      <Pager
        first={first}
        shown={shown.length}
        total={rows.length}
        step={rowsPerPicture}
        noun="unit"
        onPage={onPage}
      />
    </figure>
  );
}
