'use client';

import { useEffect, useState } from 'react';
import type { Effect } from '../../lib/analysis/engine/EngineApi';
import type { FleetResult } from '../../lib/analysis/types';
import type { Decision } from '../../lib/records/decisions/Decision';
import { useEngine } from '../engine/EngineProvider';

/** The comparison with what edits would change. */
export type EffectState =
  | { readonly status: 'none' }
  | { readonly status: 'computing' }
  | { readonly status: 'failed'; readonly message: string }
  | { readonly status: 'known'; readonly effect: Effect };

export interface EffectOf {
  readonly state: EffectState;
  readonly show: () => void;
  readonly stop: () => void;
}

/** What decisions that are not applied would change, asked for by a person; other decisions start without an answer. */
export function useEffectOf(fleet: FleetResult, decisions: readonly Decision[]): EffectOf {
  const { request } = useEngine();
  const about = JSON.stringify(decisions);
  const [given, setGiven] = useState<{
    readonly fleet: FleetResult;
    readonly about: string;
    readonly state: EffectState;
  } | null>(null);
  const isComputing = given?.state.status === 'computing';
  const isCurrent = given?.fleet === fleet && given.about === about;
  // A worker that is gone computes nothing either.
  const stop = () => void request.stopEffect().catch(() => {});
  useEffect(() => {
    // An answer to what is no longer asked would only keep the machine busy.
    if (isComputing && !isCurrent) request.stopEffect().catch(() => {});
  }, [request, isComputing, isCurrent]);
  const show = () => {
    const keep = (state: EffectState) =>
      setGiven((now) =>
        now === null || (now.fleet === fleet && now.about === about) ? { fleet, about, state } : now,
      );
    setGiven({ fleet, about, state: { status: 'computing' } });
    request.effect(decisions).then(
      (effect) => keep({ status: 'known', effect }),
      (error: unknown) =>
        keep({ status: 'failed', message: error instanceof Error ? error.message : String(error) }),
    );
  };
  return { state: isCurrent ? given.state : { status: 'none' }, show, stop };
}
