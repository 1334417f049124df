'use client';

import { useMemo } from 'react';
import type { DriftFinding, DriftResult } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { Term } from '../frame/Term';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { counted } from '../words/counted';
import { findingName } from '../words/driftSentence';
import { Acknowledge } from './Acknowledge';
import { AcknowledgedFindings } from './AcknowledgedFindings';
import styles from './drift.module.css';
import { findingColumns } from './findingColumns';
import type { Acknowledgements } from './useAcknowledgements';

interface FindingsProps {
  readonly result: DriftResult;
  readonly acknowledged: Acknowledgements;
  readonly characteristics: FleetResult['characteristics'];
  readonly onShow: (finding: DriftFinding) => void;
}

function columnsOf({
  acknowledged,
  characteristics,
  onShow,
}: Omit<FindingsProps, 'result'>): readonly DataColumn<DriftFinding>[] {
  const nameOf = (finding: DriftFinding) => findingName(finding, characteristics);
  const act: DataColumn<DriftFinding> = {
    id: 'act',
    header: 'Look or acknowledge',
    saved: [],
    value: () => null,
    cell: (finding) => (
      <span className={styles.acts}>
        <button type="button" onClick={() => onShow(finding)}>
          Show<span className="visuallyHidden">{` ${nameOf(finding)}`}</span>
        </button>
        <Acknowledge finding={finding} name={nameOf(finding)} acknowledged={acknowledged} />
      </span>
    ),
  };
  const columns = findingColumns(characteristics);
  const before = columns.findIndex(({ id }) => id === 'pattern');
  return columns.toSpliced(before, 0, act);
}

/** Open signals, the strongest first, then those that a person has acknowledged. */
export function Findings({ result, acknowledged, characteristics, onShow }: FindingsProps) {
  const columns = useMemo(
    () => columnsOf({ acknowledged, characteristics, onShow }),
    [acknowledged, characteristics, onShow],
  );
  const open = result.findings.filter((finding) => acknowledged.of(finding) === null);
  return (
    <section aria-label="Signals" className="landscape">
      <h2>Signals</h2>
      <p>
        <Term name="drift">Drift</Term> shows as <Term name="signal">signals</Term>. One row a unit and
        series, those first that chance would bring least often: how often it would bring a signal as strong
        somewhere in the whole fleet, by charts of that kind. ‘Since’ is where the cumulative sum last stood
        at zero, or the reading itself. In brackets: signals that this series’ own charts would raise over its
        whole history if nothing had changed.
      </p>
      <DataTable
        caption={counted(open.length, 'open finding')}
        columns={columns}
        rows={open}
        rowKey={({ unit, series }) => `${unit} ${series}`}
        empty="No signal is open."
      />
      <AcknowledgedFindings result={result} acknowledged={acknowledged} characteristics={characteristics} />
    </section>
  );
}
