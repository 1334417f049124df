import { driftResult, usualDriftSettings } from '../../analysis/drift/driftResult';
import type { ChartedSeries } from '../../analysis/drift/types';
import { type Rule, spreadRule, trendRule } from './plainRules';
import { watchedFleet } from './watchedFleet';

/** Share of drifting units found within so many overhauls of the drift's start, by three rules of equal false signals. */
export interface Detection {
  readonly perOverhaul_sd: number;
  readonly withinOverhauls: number;
  readonly charts: number;
  readonly spread: number;
  readonly trend: number;
}

/** What the comparison ran on, and what it found. */
export interface DetectionResult {
  readonly fleets: number;
  /** Share of undrifting units with a signal in their whole history: the same for all rules. */
  readonly falseShare: { readonly charts: number; readonly spread: number; readonly trend: number };
  readonly rows: readonly Detection[];
}

const units = 20;
const years = 23;
/** As many false signals a year of each series as a fleet of 500 series raises at a budget of 2. */
const budget_per_year = 0.08;
/** The drift starts at this overhaul, so that every rule has a history to learn from. */
const from = 4;
const drifts_sd = [0.5, 1, 2] as const;
const within = [3, 5, 8] as const;

/** Number of the overhaul of a reading. */
function overhaulOf(name: string): number {
  return Number(name.slice(name.lastIndexOf('-') + 1));
}

/** Overhaul of each unit's first signal by the charts in force together; none: infinite. */
function firstByCharts(charted: readonly ChartedSeries[]): ReadonlyMap<string, readonly number[]> {
  const { findings } = driftResult(
    { asOf: '2026-01-01', source: 'own' },
    { charted, uncharted: [] },
    { ...usualDriftSettings, budget_per_year },
  );
  return new Map(
    findings.map(({ unit, signals }) => [unit, signals.map(({ overhaul }) => overhaulOf(overhaul))]),
  );
}

/** First overhaul from the drift's start on at which a rule speaks, and whether it spoke at all. */
function firstFrom(overhauls: readonly number[], start: number): number {
  return overhauls
    .filter((overhaul) => overhaul >= start)
    .reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY);
}

/**
 * Compares the charts with a plain rule of two standard deviations and with a regression t test, both with the threshold at
 * which as many undrifting units have a false signal as by the charts. Fleets of 20 units, the drift from the fourth overhaul on.
 */
export function detection(fleets: number, seed = 1): DetectionResult {
  const still = Array.from({ length: fleets }, (_, k) =>
    watchedFleet({ units, years, drift: null }, seed * 1_000_000 + k),
  );
  const flagged = still.map((charted) => firstByCharts(charted).size).reduce((sum, one) => sum + one, 0);
  const falseShare = flagged / (fleets * units);
  const spread = tuned(spreadRule, still, falseShare);
  const trend = tuned(trendRule, still, falseShare);
  const rows: Detection[] = [];
  for (const perOverhaul_sd of drifts_sd) {
    const counts = within.map(() => ({ charts: 0, spread: 0, trend: 0 }));
    for (let k = 0; k < fleets; k++) {
      const drift = { unit: 0, from, perOverhaul_sd };
      const charted = watchedFleet({ units, years, drift }, seed * 1_000_000 + 500_000 + k);
      const first = {
        charts: firstFrom(firstByCharts(charted).get('U0') ?? [], from),
        spread: firstFrom(overhaulsOf(spread.rule(charted), 'U0', spread.threshold), from),
        trend: firstFrom(overhaulsOf(trend.rule(charted), 'U0', trend.threshold), from),
      };
      within.forEach((overhauls, index) => {
        const count = counts[index];
        if (count === undefined) return;
        for (const name of ['charts', 'spread', 'trend'] as const)
          if (first[name] < from + overhauls) count[name]++;
      });
    }
    within.forEach((withinOverhauls, index) => {
      const { charts = 0, spread: plain = 0, trend: line = 0 } = counts[index] ?? {};
      rows.push({
        perOverhaul_sd,
        withinOverhauls,
        charts: charts / fleets,
        spread: plain / fleets,
        trend: line / fleets,
      });
    });
  }
  return { fleets, falseShare: { charts: falseShare, spread: spread.share, trend: trend.share }, rows };
}

function overhaulsOf(scores: ReturnType<Rule>, unit: string, threshold: number): readonly number[] {
  return (scores.get(unit) ?? [])
    .filter(({ score }) => score > threshold)
    .map(({ overhaul }) => overhaulOf(overhaul));
}

/** A rule with the threshold that a given share of units passes at some reading. */
function tuned(rule: Rule, still: readonly (readonly ChartedSeries[])[], share: number) {
  const highest = still
    .flatMap((charted) =>
      [...rule(charted).values()].map((scores) =>
        scores.reduce((most, { score }) => Math.max(most, score), 0),
      ),
    )
    .sort((a, b) => b - a);
  const passing = Math.round(share * highest.length);
  const threshold = ((highest[passing - 1] ?? 0) + (highest[passing] ?? 0)) / 2;
  return { rule, threshold, share: highest.filter((score) => score > threshold).length / highest.length };
}
