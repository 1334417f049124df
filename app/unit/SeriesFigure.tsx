'use client';

import { useCallback } from 'react';
import type { UnitResult, UnitSeries } from '../../lib/analysis/types';
import type { PlotPlace } from '../../lib/charts/placeInPlot';
import { seriesPicture } from '../../lib/charts/seriesPicture';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { midSentence } from '../words/seriesName';
import { seriesPlaceWords } from '../words/seriesPlaceWords';
import { SeriesKey } from './SeriesKey';

interface SeriesFigureProps {
  readonly result: UnitResult;
  readonly series: UnitSeries;
  readonly name: string;
  readonly description: string;
}

/** The picture of one series over the unit's hours, with its key. */
export function SeriesFigure({ result, series, name, description }: SeriesFigureProps) {
  const build = useCallback<BuildSpec>(
    (theme, narrow) =>
      seriesPicture(
        {
          series,
          hoursNow: result.unit.hoursNow,
          asOf: result.asOf,
          nextOverhaulDate: result.unit.nextOverhaulDate,
        },
        theme,
        narrow,
      ),
    [result, series],
  );
  if (series.readings.length === 0 && series.sisterBand.length === 0) {
    return <p>There is nothing to draw: no reading of this series can be used.</p>;
  }
  return (
    <figure>
      <figcaption>
        <SeriesKey series={series} />
      </figcaption>
      <Chart
        build={build}
        label={`Readings and forecast of ${midSentence(name)}, ${result.unit.unit}`}
        description={description}
        height_px={300}
        wordsAt={(place: PlotPlace) => seriesPlaceWords(series, place)}
      />
    </figure>
  );
}
