'use client';

import Link from 'next/link';
import { useState } from 'react';
import type { BenchChecks, BenchEntry, BenchSheet } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { unitAddress } from '../address/unitAddress';
import { NotComputed } from '../engine/NotComputed';
import { useAsked } from '../engine/useAsked';
import { Cautions } from '../frame/Cautions';
import { Prose } from '../frame/Prose';
import { Term } from '../frame/Term';
import { benchAnswer, sheetFacts } from '../words/benchSheetWords';
import { questionedSentence, workshopCautions } from '../words/benchWords';
import { AfterPanel } from './AfterPanel';
import styles from './bench.module.css';
import { OverhaulFields } from './OverhaulFields';
import { PartFields } from './PartFields';
import { SavePanel } from './SavePanel';
import { SheetButtons } from './SheetButtons';
import { StageTable } from './StageTable';
import type { TypedEntry } from './useEntry';

interface BenchViewProps {
  readonly fleet: FleetResult;
  readonly sheet: BenchSheet;
  readonly typed: TypedEntry & { readonly entry: BenchEntry };
}

/** The sheet of one unit: what to expect, boxes to type in, what is asked about them, what the overhaul did, and saving. */
export function BenchView({ fleet, sheet, typed }: BenchViewProps) {
  const { entry, change, notKept } = typed;
  const { characteristics } = fleet;
  const asked = useAsked(fleet, 'benchChecks', entry);
  const [saved, setSaved] = useState<BenchChecks | null>(null);
  const checks =
    saved ?? (asked.status === 'answered' ? asked.answer : asked.status === 'waiting' ? asked.before : null);
  const stage = { sheet, entry, change, checks, characteristics };
  return (
    <>
      <p className="answer">
        <Prose text={benchAnswer(sheet, characteristics)} />
      </p>
      <div className={styles.before}>
        <Cautions />
        <section aria-label="Before the work" className={styles.workshop}>
          <ul>
            {workshopCautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      </div>
      <SheetButtons sheet={sheet} characteristics={characteristics} uom={entry.uom} />
      <dl className={styles.facts}>
        {sheetFacts(sheet).map(([term, text]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>
              <Prose text={text} />
            </dd>
          </div>
        ))}
      </dl>
      <h2>Overhaul</h2>
      {notKept !== null && <p role="alert">{notKept}</p>}
      {asked.status === 'failed' && <NotComputed {...asked} />}
      <OverhaulFields sheet={sheet} entry={entry} change={change} faults={checks?.entryFaults ?? []} />
      <p className="visuallyHidden" aria-live="polite">
        {checks === null ? '' : questionedSentence(checks.boxes, entry.stands, characteristics)}
      </p>
      <h2>
        <Term name="stage">As found</Term>, before stripping
      </h2>
      <StageTable stage="found" {...stage} />
      <h2>Parts</h2>
      <PartFields sheet={sheet} entry={entry} change={change} />
      <h2 className={styles.newPage}>
        <Term name="stage">As left</Term>, after reassembly
      </h2>
      <StageTable stage="left" {...stage} />
      <label className={styles.remarks}>
        Remarks
        <textarea
          rows={3}
          value={entry.remarks}
          onChange={(event) => change({ remarks: event.target.value })}
        />
      </label>
      <AfterPanel sheet={sheet} entry={entry} checks={checks} characteristics={characteristics} />
      <SavePanel fleet={fleet} sheet={sheet} typed={typed} checks={checks} onSaved={setSaved} />
      <p className="screenOnly">
        <Link href={unitAddress(sheet.unit.unit)}>History of {sheet.unit.unit}</Link>.{' '}
        <Link href="/methods/#bench">How this was computed</Link>
      </p>
    </>
  );
}
