'use client';

import { useMemo } from 'react';
import type { DriftFinding, DriftResult } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatCount } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { unitLinkColumn } from '../table/unitLinkColumn';
import { counted } from '../words/counted';
import { patternWords, rateWords, sideWords, strongestWords } from '../words/driftSentence';
import { seriesName } from '../words/seriesName';
import { Acknowledge } from './Acknowledge';
import { AcknowledgedFindings } from './AcknowledgedFindings';
import styles from './drift.module.css';
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
  return [
    unitLinkColumn(({ series }) => series),
    { id: 'series', header: 'Series', value: ({ series }) => seriesName(series, characteristics) },
    { id: 'side', header: 'Reads', value: sideWords },
    { id: 'since', header: 'Since', numeric: true, value: ({ sinceDate }) => sinceDate },
    { id: 'last', header: 'Last signal', numeric: true, value: ({ lastDate }) => lastDate },
    {
      id: 'chance',
      header: 'As strong, by chance',
      value: ({ byChance_per_year }) => byChance_per_year,
      cell: ({ byChance_per_year }) => rateWords(byChance_per_year),
    },
    { id: 'pattern', header: 'After reassembly', text: true, value: patternWords },
    {
      id: 'act',
      header: 'Look or acknowledge',
      value: () => null,
      cell: (finding) => (
        <span className={styles.acts}>
          <button type="button" onClick={() => onShow(finding)}>
            Show<span className="visuallyHidden">{` ${finding.unit} ${finding.series}`}</span>
          </button>
          <Acknowledge finding={finding} acknowledged={acknowledged} />
        </span>
      ),
    },
    { id: 'strongest', header: 'Strongest signal', value: strongestWords },
    {
      id: 'signals',
      header: 'Signals (by chance)',
      numeric: true,
      value: ({ signals }) => signals.length,
      cell: ({ signals, expectedFalse }) => `${formatCount(signals.length)} (${expectedFalse.toFixed(2)})`,
    },
  ];
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
        One row a unit and series, those first that chance would bring least often: how often it would bring a
        signal as strong somewhere in the whole fleet, by charts of that kind. ‘Since’ is where the cumulative
        sum last stood at zero, or the reading itself. In brackets: signals that this series’ own charts would
        raise over its whole history if nothing had changed.
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
