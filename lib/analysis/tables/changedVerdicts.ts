import { group } from 'd3-array';
import { wholePercents } from '../combineChances';
import type { Action, Decision } from '../decisions/types';
import type { LimitKind, MarginRow } from '../types';

/** What is said of one limit of a unit. */
export interface Verdict {
  readonly limit_mm: number;
  /** Advice for the next overhaul; null if nothing can be said. */
  readonly action: Action | null;
  readonly bringForwardTo: string | null;
  readonly chanceNow: number | null;
  readonly chanceAtNextOverhaul: number | null;
  readonly nextOverhaulDate: string | null;
  readonly dateMedian: string | null;
  /** Why there is no forecast, if there is none. */
  readonly reason: string | null;
}

/** A verdict before and after; null where there is no such limit, or no such unit. */
export interface ChangedVerdict {
  readonly unit: string;
  readonly series: string;
  readonly limitKind: LimitKind;
  readonly before: Verdict | null;
  readonly after: Verdict | null;
}

/** What verdicts are made from. */
export interface Judged {
  readonly margins: readonly MarginRow[];
  readonly decisions: readonly Decision[];
}

/**
 * Verdicts that differ as they are shown: advice, day, chances in whole percent, median date or the reason why there is no
 * forecast; changed advice first, then in order of unit and series.
 */
export function changedVerdicts(before: Judged, after: Judged): readonly ChangedVerdict[] {
  const [old, now] = [verdictsOf(before), verdictsOf(after)];
  return [...new Set([...old.keys(), ...now.keys()])]
    .sort()
    .flatMap((place): readonly ChangedVerdict[] => {
      const [was, is] = [old.get(place) ?? null, now.get(place) ?? null];
      if (shown(was?.verdict) === shown(is?.verdict)) return [];
      const { unit, series, limitKind } = (was ?? is) as Placed;
      return [{ unit, series, limitKind, before: was?.verdict ?? null, after: is?.verdict ?? null }];
    })
    .sort((a, b) => Number(isAdviceChanged(b)) - Number(isAdviceChanged(a)));
}

interface Placed {
  readonly unit: string;
  readonly series: string;
  readonly limitKind: LimitKind;
  readonly verdict: Verdict;
}

/** Verdicts by unit, series and side of the limit. */
function verdictsOf({ margins, decisions }: Judged): ReadonlyMap<string, Placed> {
  const advice = group(
    decisions.filter(({ overhaul }) => overhaul === 1),
    ({ unit }) => unit,
  );
  const placed = new Map<string, Placed>();
  for (const margin of margins) {
    const { unit, series, limitKind, limit_mm } = margin;
    if (limitKind === null || limit_mm === null) continue;
    const own = advice
      .get(unit)?.[0]
      ?.series.find((one) => one.series === series && one.limitKind === limitKind);
    const verdict = {
      limit_mm,
      action: own?.action ?? null,
      bringForwardTo: own?.bringForwardTo ?? null,
      chanceNow: margin.chanceNow,
      chanceAtNextOverhaul: margin.chanceAtNextOverhaul,
      nextOverhaulDate: margin.nextOverhaulDate,
      dateMedian: margin.dateMedian,
      reason: margin.reason,
    };
    placed.set([unit, series, limitKind].join('\u001f'), { unit, series, limitKind, verdict });
  }
  return placed;
}

/** A verdict as text that is the same where nothing that is shown of it differs. */
function shown(verdict: Verdict | undefined): string {
  if (verdict === undefined) return '';
  const { action, bringForwardTo, nextOverhaulDate, dateMedian, reason } = verdict;
  const chances = [verdict.chanceNow, verdict.chanceAtNextOverhaul].map(wholePercents);
  return JSON.stringify([action, bringForwardTo, nextOverhaulDate, dateMedian, reason, ...chances]);
}

/** Whether what is advised, or its day, would be another. */
export function isAdviceChanged({ before, after }: ChangedVerdict): boolean {
  return before?.action !== after?.action || before?.bringForwardTo !== after?.bringForwardTo;
}
