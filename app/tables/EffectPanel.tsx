'use client';

import { useMemo } from 'react';
import type { Effect } from '../../lib/analysis/engine/EngineApi';
import type { ChangedVerdict } from '../../lib/analysis/tables/changedVerdicts';
import type { FleetResult } from '../../lib/analysis/types';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { unitLinkColumn } from '../table/unitLinkColumn';
import { effectSentence, verdictWords } from '../words/effectWords';
import { seriesName } from '../words/seriesName';
import type { EffectOf } from './useEffectOf';

interface EffectPanelProps {
  readonly effect: EffectOf;
  readonly characteristics: FleetResult['characteristics'];
}

/** What the edits would change: under way, failed, or the verdicts before and after. */
export function EffectPanel({ effect: { state, stop }, characteristics }: EffectPanelProps) {
  return (
    <div aria-live="polite">
      {state.status === 'computing' && (
        <p className="buttons">
          Your files are being analysed with the edits; what is open stays as it is.
          <button type="button" onClick={stop}>
            Stop
          </button>
        </p>
      )}
      {state.status === 'failed' && <p role="alert">{state.message}</p>}
      {state.status === 'known' && <KnownEffect effect={state.effect} characteristics={characteristics} />}
    </div>
  );
}

function KnownEffect({
  effect,
  characteristics,
}: {
  readonly effect: Effect;
  readonly characteristics: FleetResult['characteristics'];
}) {
  const columns = useMemo(
    (): readonly DataColumn<ChangedVerdict>[] => [
      unitLinkColumn(({ series }) => series),
      {
        id: 'series',
        header: 'Series',
        value: ({ series, limitKind }) => `${seriesName(series, characteristics)}, ${limitKind} limit`,
      },
      { id: 'before', header: 'Before', text: true, value: ({ before }) => verdictWords(before) },
      { id: 'after', header: 'After', text: true, value: ({ after }) => verdictWords(after) },
    ],
    [characteristics],
  );
  return (
    <>
      <p>{effectSentence(effect)}</p>
      {effect.changed.length > 0 && (
        <DataTable
          caption="Verdicts that the edits would change"
          columns={columns}
          rows={effect.changed}
          rowKey={({ unit, series, limitKind }) => `${unit} ${series} ${limitKind}`}
          empty=""
        />
      )}
    </>
  );
}
