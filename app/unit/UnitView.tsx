'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { characteristicOf, combineChances } from '../../lib/analysis/combineChances';
import type { FleetResult, UnitResult } from '../../lib/analysis/types';
import { benchAddress } from '../address/benchAddress';
import { UnitDecisions } from '../decisions/UnitDecisions';
import { Prose } from '../frame/Prose';
import { Term } from '../frame/Term';
import { DataTable } from '../table/DataTable';
import { midSentence, seriesName } from '../words/seriesName';
import { unitSentences } from '../words/unitSentence';
import { CirclePanel } from './CirclePanel';
import { historyColumns } from './historyColumns';
import { SeriesChoice } from './SeriesChoice';
import { SeriesPanel } from './SeriesPanel';
import { UnitFacts } from './UnitFacts';
import { UnitPlaces } from './UnitPlaces';

interface UnitViewProps {
  readonly result: UnitResult;
  readonly fleet: FleetResult;
  /** Series chosen in the address; the deciding one if empty or unknown. */
  readonly series: string;
  readonly onSeries: (series: string) => void;
}

/** One unit: the answer, its facts, one of its series, its history. */
export function UnitView({ result, fleet, series, onSeries }: UnitViewProps) {
  const { characteristics } = fleet;
  const outlook = useMemo(
    () =>
      combineChances(
        result.series.flatMap((one) => one.margins),
        characteristics.map((one) => one.code),
      ),
    [result, characteristics],
  );
  const { deciding } = outlook;
  const shown =
    result.series.find((one) => one.series === series) ??
    result.series.find((one) => one.series === deciding?.series) ??
    result.series[0];
  const characteristic =
    shown === undefined
      ? null
      : characteristicOf(
          shown.series,
          characteristics.map(({ code }) => code),
        );
  // Of what is read at clock positions a series is named after one of the circle's numbers.
  const circled = characteristic === shown?.series ? null : characteristic;
  const named = deciding === null ? null : seriesName(deciding.series, characteristics);
  return (
    <>
      <p className="answer">
        <Prose text={unitSentences(result.unit, named, deciding).join(' ')} />
      </p>
      <h2>
        <Term name="series">Series</Term>
      </h2>
      {shown === undefined ? (
        <p>No reading of this unit can be used. The Records page lists what was held, and why.</p>
      ) : (
        <>
          <SeriesChoice
            series={result.series}
            characteristics={characteristics}
            chosen={shown.series}
            onChoose={onSeries}
          />
          <SeriesPanel
            fleet={fleet}
            result={result}
            series={shown}
            name={seriesName(shown.series, characteristics)}
            decides={shown.series === deciding?.series}
          />
          {circled !== null && (
            <CirclePanel
              fleet={fleet}
              unit={result.unit.unit}
              characteristic={circled}
              name={midSentence(seriesName(circled, characteristics))}
            />
          )}
        </>
      )}
      <UnitDecisions fleet={fleet} unit={result.unit.unit} />
      <p className="screenOnly">
        <Link href={benchAddress(result.unit.unit)}>Bench sheet of its next overhaul</Link>
      </p>
      <h2>Position and history</h2>
      <UnitFacts result={result} outlook={outlook} />
      <DataTable
        caption={`Overhauls of ${result.unit.unit}`}
        columns={historyColumns}
        rows={result.history}
        rowKey={(row, index) => `${row.overhaul} ${index}`}
        empty="No overhaul of this unit is on record."
      />
      <UnitPlaces unit={result.unit.unit} places={result.places} />
      <p className="screenOnly">
        <Link href="/methods/#wear-model">How this was computed</Link>
      </p>
    </>
  );
}
