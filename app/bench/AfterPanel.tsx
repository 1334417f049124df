'use client';

import type { BenchChecks, BenchEntry, BenchSheet, SeriesAfter } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { DataTable } from '../table/DataTable';
import { afterSentence, surpriseSentences } from '../words/benchAfterWords';
import { useWrittenMemo } from '../writing/useWriting';
import { afterColumns } from './afterColumns';

interface AfterPanelProps {
  readonly sheet: BenchSheet;
  readonly entry: BenchEntry;
  readonly checks: BenchChecks | null;
  readonly characteristics: FleetResult['characteristics'];
}

/** What the overhaul did: wear in the run, the effect of reassembly, the forecast before against after, and what surprised. */
export function AfterPanel({ sheet, entry, checks, characteristics }: AfterPanelProps) {
  const life_h = checks?.effect.ratedLife_h ?? null;
  const columns = useWrittenMemo(
    () => afterColumns(characteristics, entry.uom, life_h),
    [characteristics, entry.uom, life_h],
  );
  if (checks === null || checks.effect.series.length === 0) return null;
  const surprises = surpriseSentences(checks, entry, characteristics);
  return (
    <section aria-label="What the overhaul did">
      <h2>What the overhaul did</h2>
      <p>{afterSentence(sheet, entry, checks)}</p>
      {surprises.length > 0 && (
        <ul aria-label="Surprises">
          {surprises.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <DataTable<SeriesAfter>
        caption={`What the overhaul did to ${sheet.unit.unit}`}
        columns={columns}
        rows={checks.effect.series}
        rowKey={({ series, limitKind }) => `${series} ${limitKind ?? ''}`}
        empty="No reading is typed yet."
      />
      <p>An extrapolation never authorises a longer interval; within limits does not mean safe to run.</p>
    </section>
  );
}
