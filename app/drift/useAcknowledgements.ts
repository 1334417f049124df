'use client';

import { useCallback, useEffect, useMemo, useState } from 'react';
import type { DriftFinding, DriftResult } from '../../lib/analysis/drift/types';
import { acknowledgement, acknowledgementsOf } from '../../lib/records/decisions/acknowledgements';
import type { AcknowledgementDecision } from '../../lib/records/decisions/Decision';
import { decisionsInForce } from '../../lib/records/decisions/journal';
import { useEngine } from '../engine/EngineProvider';

/** Acknowledged findings, and ways to acknowledge one and to take that back. */
export interface Acknowledgements {
  /** What was remarked on a finding; null if nothing was, or if it has later signals. */
  readonly of: (finding: DriftFinding) => AcknowledgementDecision | null;
  readonly acknowledge: (finding: DriftFinding, remark: string) => Promise<void>;
  readonly takeBack: (id: string) => Promise<void>;
}

/** Acknowledgements in force about one set of data, from the journal and written to it. */
export function useAcknowledgements(source: DriftResult['source']): Acknowledgements {
  const { request } = useEngine();
  const [inForce, setInForce] = useState<readonly AcknowledgementDecision[]>([]);
  const read = useCallback(
    async () => setInForce(acknowledgementsOf(decisionsInForce(await request.journal()), source)),
    [request, source],
  );
  useEffect(() => {
    // Without a worker there is no finding to acknowledge either.
    read().catch(() => setInForce([]));
  }, [read]);
  return useMemo(() => {
    const byId = new Map(inForce.map((one) => [one.id, one]));
    const about = ({ unit, series, lastDate }: DriftFinding, remark: string) =>
      acknowledgement({ source, unit, series, upTo: lastDate, remark });
    return {
      of: (finding) => {
        const known = byId.get(about(finding, '').id);
        return known !== undefined && known.upTo >= finding.lastDate ? known : null;
      },
      acknowledge: async (finding, remark) => {
        await request.note([about(finding, remark)]);
        await read();
      },
      takeBack: async (id) => {
        await request.takeNotesBack([id]);
        await read();
      },
    };
  }, [inForce, source, request, read]);
}
