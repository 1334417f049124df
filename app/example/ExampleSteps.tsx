'use client';

import Link from 'next/link';
import { type ReactNode, useMemo } from 'react';
import type { Spares } from '../../lib/analysis/demand/types';
import type { FleetResult, UnitResult } from '../../lib/analysis/types';
import { Prose } from '../frame/Prose';
import { decisionStepWords, orderStepWords, partStepWords } from '../words/exampleOrderWords';
import { datesWords, groupWords, levelWords, rowsWords, runWords } from '../words/exampleRecordWords';
import { midSentence, seriesName } from '../words/seriesName';
import type { Example } from './chosenExample';
import { presentRun } from './presentRun';
import { RunReadings } from './RunReadings';

interface StepProps {
  readonly title: string;
  readonly text: string;
  /** Name of the paragraph of Methods that explains the step. */
  readonly methods: string;
  readonly children?: ReactNode;
}

function Step({ title, text, methods, children }: StepProps) {
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <p>
        <Prose text={text} />{' '}
        <Link href={`/methods/#${methods}`} className="screenOnly">
          How: {midSentence(title)}
        </Link>
      </p>
      {children}
    </section>
  );
}

interface ExampleStepsProps {
  readonly fleet: FleetResult;
  readonly spares: Spares;
  readonly example: Example;
  readonly result: UnitResult;
}

/** One unit from its rows in the files to the order of a part, a number a step. */
export function ExampleSteps({ fleet, spares, example, result }: ExampleStepsProps) {
  const { characteristics } = fleet;
  const { decision, wanted, order } = example;
  const series = result.series.find((one) => one.series === example.series);
  const limitKind = decision?.series.find((one) => one.series === example.series)?.limitKind;
  const margin = series?.margins.find((one) => one.limitKind === limitKind) ?? series?.margins[0];
  const run = useMemo(
    () => (series === undefined || margin === undefined ? null : presentRun(result, series, margin)),
    [result, series, margin],
  );
  if (series === undefined || margin === undefined)
    return (
      <p>
        What is lacking: a usable reading and a limit of one series of {result.unit.unit}. The Records page
        lists what was held, the Tables page the limits.
      </p>
    );
  const { unit } = result.unit;
  const title = seriesName(series.series, characteristics);
  const name = midSentence(title);
  const { acceptedRisk } = spares.settings;
  return (
    <>
      <Step title="Rows of the files" text={rowsWords(name, run, series.fit)} methods="gauge-noise">
        {run !== null && (
          <RunReadings caption={`Readings of ${name} of ${unit}, present run`} readings={run.readings} />
        )}
      </Step>
      <Step title="The run" text={runWords(result.unit, run)} methods="runs" />
      <Step title="The fit of the sister group" text={groupWords(series.fit)} methods="wear-model" />
      <Step title="Level and margin today" text={levelWords(unit, title, margin)} methods="uncertainty" />
      <Step title="Early, median and late" text={datesWords(unit, title, margin)} methods="margin" />
      <Step
        title="The decision"
        text={decisionStepWords(decision, acceptedRisk, characteristics)}
        methods="decisions"
      />
      <Step title="The part" text={partStepWords(decision, wanted, order, spares)} methods="spares" />
      <Step title="The order" text={orderStepWords(order)} methods="spares" />
    </>
  );
}
