import type {
  DriftFinding,
  DriftResult,
  DriftSignal,
  Pattern,
  RunRule,
} from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatCount, formatDate, formatFixed, formatScore } from '../../lib/charts/format';
import { counted } from './counted';
import { capitalised, midSentence, seriesName } from './seriesName';

type Characteristics = FleetResult['characteristics'];

/** Longer waits for a chance event are not told apart. */
const mostYears = 1000;

/** What a pattern of runout points to; the finding itself is the engineer's. */
const runoutPattern: Readonly<Record<Pattern, string>> = {
  persists: 'persists through reassembly: points to the shaft',
  vanishes: 'gone as left: points to seating or dirt in the contact faces',
  'cannot be told': 'cannot be told',
};

/** What a departure does at reassembly; what it points to is said of runout only. */
export function patternWords({ pattern, series }: Pick<DriftFinding, 'pattern' | 'series'>): string {
  const words = runoutPattern[pattern];
  return series === 'runout' ? words : words.replace(/: points to .*$/, '');
}

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
export function strongestWords({ strongest }: DriftFinding): string {
  const against = strongest.threshold === 0 ? '' : ` against ${formatScore(Math.abs(strongest.threshold))}`;
  return `${signalWords(strongest)} ${formatScore(Math.abs(strongest.statistic))}${against}`;
}

/** How often chance brings something: '0.4 a year' below once in two years, else 'once in 25 years'. */
export function rateWords(rate_per_year: number): string {
  if (!(rate_per_year >= 1 / mostYears)) return `under once in ${formatCount(mostYears)} years`;
  const years = 1 / rate_per_year;
  if (years < 2) return `${formatFixed(rate_per_year, 1)} a year`;
  const step = 10 ** Math.max(0, Math.floor(Math.log10(years)) - 1);
  return `once in ${formatCount(Math.round(years / step) * step)} years`;
}

/** Which way a finding departs, and if some of its signals went the other way. */
export function sideWords({ side, signals }: DriftFinding): string {
  const other = signals.some((signal) => signal.side !== side);
  return side === 'upper' ? `high${other ? ', once low' : ''}` : `low${other ? ', once high' : ''}`;
}

/** What a finding is called: 'runout of H-2005'. */
export function findingName(
  { unit, series }: Pick<DriftFinding, 'unit' | 'series'>,
  characteristics: Characteristics,
): string {
  return `${midSentence(seriesName(series, characteristics))} of ${unit}`;
}

/** One finding in words: 'H-2005, runout, high since 2021-03-24, last on 2026-07-19'. */
export function driftWords(finding: DriftFinding, characteristics: Characteristics): string {
  const name = midSentence(seriesName(finding.series, characteristics));
  const way = finding.side === 'upper' ? 'high' : 'low';
  const since =
    finding.sinceDate === finding.lastDate
      ? `on ${formatDate(finding.sinceDate)}`
      : `since ${formatDate(finding.sinceDate)}, last on ${formatDate(finding.lastDate)}`;
  return `${finding.unit}, ${name}, ${way} ${since}`;
}

/** The strongest finding of each unit, the strongest first. */
function strongestOfUnits(open: readonly DriftFinding[], most: number): readonly DriftFinding[] {
  const units = new Map<string, DriftFinding>();
  for (const finding of open) if (!units.has(finding.unit)) units.set(finding.unit, finding);
  return [...units.values()].slice(0, most);
}

/** The answer of the Drift page: what signals are open, since when, and how sure the strongest are. */
export function driftSentence(
  result: DriftResult,
  open: readonly DriftFinding[],
  characteristics: Characteristics,
): string {
  if (result.readings === 0)
    return 'No reading can be compared with a forecast yet, so no drift can be told: ‘Series without a forecast’ on the Drift page says what each series lacks.';
  if (open.length === 0)
    return result.findings.length === 0
      ? `No signal in ${counted(result.readings, 'reading')}: nothing moves unlike its own forecast.`
      : `Every signal is acknowledged: ${counted(result.findings.length, 'series', 'series')} of single units.`;
  const named = strongestOfUnits(open, 3).map((finding) => {
    const pattern = finding.pattern === 'cannot be told' ? '' : `; ${patternWords(finding)}`;
    return `${driftWords(finding, characteristics)} (by chance ${rateWords(finding.byChance_per_year)}${pattern})`;
  });
  const count = `${counted(open.length, 'series of a unit has', 'series of units have')} an open signal`;
  return `${capitalised(count)}; the strongest: ${named.join('; ')}.`;
}

/** Signals found against those that chance alone would raise, over all the years. */
export function budgetSentence(result: DriftResult): string {
  const signals = result.findings.flatMap((finding) => finding.signals);
  const openings = new Set(signals.map(({ unit, overhaul }) => JSON.stringify([unit, overhaul]))).size;
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
  const came =
    signals.length === 0
      ? 'none came'
      : `${formatCount(signals.length)} came, at ${counted(openings, 'overhaul')}: they come in groups, since series share readings and charts share series, so that their number varies more than that of single chance events`;
  return `Over ${counted(years, 'year')} and ${counted(result.readings, 'reading')} about ${counted(expected, 'signal')} would come by chance alone (${formatFixed(perYear, 1)} a year); ${came}.${short}`;
}
