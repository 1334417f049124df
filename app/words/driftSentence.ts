import type {
  DriftFinding,
  DriftResult,
  DriftSignal,
  Pattern,
  RunRule,
} from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatScore } from '../../lib/charts/format';
import { counted } from './counted';
import { capitalised, midSentence, seriesName } from './seriesName';

type Characteristics = FleetResult['characteristics'];

/** What a pattern points to; the finding itself is the engineer's. */
export const patternWords: Readonly<Record<Pattern, string>> = {
  persists: 'persists through reassembly: points to the shaft',
  vanishes: 'gone as left: points to seating or dirt in the contact faces',
  'cannot be told': 'whether it persists cannot be told from these readings',
};

export const chartWords = {
  individuals: 'single readings',
  ewma: 'weighted mean',
  cusum: 'cumulative sum',
  'run rule': 'run rule',
} as const;

/** The run rules in words, after ISO 7870-2. */
export const ruleWords: Readonly<Record<RunRule, string>> = {
  oneBeyond3: 'one beyond 3 SD',
  nineOnOneSide: 'nine on one side',
  sixInTrend: 'six rising or falling',
  fourteenAlternating: 'fourteen alternating',
  twoOfThreeBeyond2: 'two of three beyond 2 SD',
  fourOfFiveBeyond1: 'four of five beyond 1 SD',
  fifteenWithin1: 'fifteen within 1 SD',
  eightOutside1: 'eight outside 1 SD',
};

/** Rule of a signal in words. */
export function signalWords({ chart, rule }: Pick<DriftSignal, 'chart' | 'rule'>): string {
  return chart === 'run rule' ? (ruleWords[rule as RunRule] ?? rule) : chartWords[chart];
}

/** The strongest signal as statistic against threshold. */
export function strongestWords({ signals }: DriftFinding): string {
  const ratio = ({ statistic, threshold }: DriftSignal) =>
    threshold === 0 ? 0 : Math.abs(statistic / threshold);
  const strongest = signals.toSorted((a, b) => ratio(b) - ratio(a))[0];
  if (strongest === undefined) return '';
  const against = strongest.threshold === 0 ? '' : ` against ${formatScore(Math.abs(strongest.threshold))}`;
  return `${signalWords(strongest)} ${formatScore(Math.abs(strongest.statistic))}${against}`;
}

/** One finding in words: 'H-2005, runout, rising since 2021-03-24'. */
export function driftWords(finding: DriftFinding, characteristics: Characteristics): string {
  const name = midSentence(seriesName(finding.series, characteristics));
  const way = finding.side === 'upper' ? 'high' : 'low';
  const since =
    finding.sinceDate === finding.lastDate
      ? `on ${finding.sinceDate}`
      : `since ${finding.sinceDate}, last on ${finding.lastDate}`;
  return `${finding.unit}, ${name}, ${way} ${since}`;
}

/** The answer of the Drift page: what signals are open, the strongest first. */
export function driftSentence(
  result: DriftResult,
  open: readonly DriftFinding[],
  characteristics: Characteristics,
): string {
  if (result.readings === 0)
    return 'No reading can be compared with a forecast yet, so no drift can be told.';
  const [first] = open;
  if (first === undefined)
    return result.findings.length === 0
      ? `No signal in ${counted(result.readings, 'reading')}: nothing moves unlike its own forecast.`
      : `Every signal is acknowledged: ${counted(result.findings.length, 'series', 'series')} of single units.`;
  const count = `${counted(open.length, 'series of a unit has', 'series of units have')} an open signal`;
  const pattern = first.pattern === 'cannot be told' ? '' : ` (${patternWords[first.pattern]})`;
  return `${capitalised(count)}; the strongest: ${driftWords(first, characteristics)}${pattern}.`;
}

/** Signals found against those that chance alone would raise, over all the years. */
export function budgetSentence(result: DriftResult): string {
  const signals = result.findings.reduce((sum, finding) => sum + finding.signals.length, 0);
  const perYear =
    result.thresholds.reduce((sum, { expected_per_year }) => sum + expected_per_year, 0) +
    result.ruleCosts
      .filter(({ rule }) => result.settings.rules.includes(rule))
      .reduce((sum, { expected_per_year }) => sum + expected_per_year, 0);
  const years = Math.round(result.years);
  const expected = Math.round(perYear * result.years);
  const unmet = result.thresholds.filter(({ met }) => !met);
  const short =
    unmet.length === 0
      ? ''
      : ' The budget cannot be kept exactly: some threshold has reached the end of its range.';
  return `Over ${counted(years, 'year')} and ${counted(result.readings, 'reading')} about ${counted(expected, 'signal')} would come by chance alone (${perYear.toFixed(1)} a year); ${counted(signals, 'signal')} came, often several from one reading, since series share readings and charts share series.${short}`;
}
