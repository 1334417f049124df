'use client';

import type { FleetResult, UnitResult, UnitSeries } from '../../lib/analysis/types';
import { Prose } from '../frame/Prose';
import { Term } from '../frame/Term';
import { DataTable } from '../table/DataTable';
import { ownLineSentence } from '../words/ownLineSentence';
import { midSentence } from '../words/seriesName';
import { expectedSentence, marginSentences } from '../words/unitSentence';
import { FitNote } from './FitNote';
import { MarginTable } from './MarginTable';
import { readingColumns } from './readingColumns';
import { SeriesFigure } from './SeriesFigure';
import styles from './unit.module.css';

interface SeriesPanelProps {
  readonly fleet: FleetResult;
  readonly result: UnitResult;
  readonly series: UnitSeries;
  readonly name: string;
  /** Whether it is the series that decides: its sentences then stand at the top of the page. */
  readonly decides: boolean;
}

/** Everything that the series says. */
function allSentences({ result, series, name }: SeriesPanelProps): readonly string[] {
  const unit = result.unit.unit;
  if (series.margins.length === 0)
    return [`No limit is known for ${name} of ${unit}, so there is no verdict.`];
  return [...new Set(series.margins.flatMap((margin) => marginSentences(unit, name, margin)))];
}

/** One series of the unit: what it says, its picture, its margins and readings, and how far the fit can be trusted. */
export function SeriesPanel(props: SeriesPanelProps) {
  const { fleet, result, series, name, decides } = props;
  const sentences = allSentences(props);
  const expected = series.margins.map(expectedSentence).find((sentence) => sentence !== null) ?? null;
  // The deciding series has had its say in the answer at the top, unless it has two limits.
  const said = decides && series.margins.length === 1;
  const text = [...(said ? [] : sentences), ...(expected === null ? [] : [expected])].join(' ');
  return (
    <>
      <h3>{name}</h3>
      {text !== '' && (
        <p>
          <Prose text={text} />
        </p>
      )}
      <SeriesFigure result={result} series={series} name={name} description={sentences.join(' ')} />
      <p>{ownLineSentence(series)}</p>
      <div className={styles.pair}>
        <div>
          <h3>Margin</h3>
          {series.margins.length === 0 ? (
            <p>No limit, no verdict.</p>
          ) : (
            <MarginTable
              caption={`Margin of ${midSentence(name)}, ${result.unit.unit}`}
              margins={series.margins}
            />
          )}
        </div>
        <FitNote fleet={fleet} fit={series.fit} />
      </div>
      <h3>Readings</h3>
      <p>
        A <Term name="run">run</Term> ends as found where the series is reset, and the next one starts as
        left.
      </p>
      <DataTable
        caption={`Readings of ${midSentence(name)}, ${result.unit.unit}`}
        columns={readingColumns}
        rows={series.readings}
        rowKey={(reading, index) => `${reading.overhaul} ${reading.stage} ${index}`}
        empty="No reading of this series can be used."
      />
    </>
  );
}
