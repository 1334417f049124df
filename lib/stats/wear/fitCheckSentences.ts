import { hoursText, percentText, twoDigits, withDecimals } from '../sentenceNumbers';
import type { Curvature } from './curvature';
import type { FitChecks } from './fitChecks';
import type { RatioName, SdName } from './types';

/** A check below this chance is named as a finding, below the other as a doubt. */
const FINDING = 0.01;
const DOUBT = 0.05;
/** Share of the posterior weight near zero from which a spread is said not to show. */
const MOSTLY_ZERO = 0.5;

const SPREADS: readonly { readonly ratio: RatioName; readonly sd: SdName; readonly words: string }[] = [
  { ratio: 'startUnit', sd: 'sdStartUnit', words: 'the start values differ from unit to unit' },
  { ratio: 'startRun', sd: 'sdStartRun', words: 'the start values differ from run to run' },
  { ratio: 'slopeUnit', sd: 'sdSlopeUnit', words: 'the wear rates differ from unit to unit' },
  { ratio: 'slopeRun', sd: 'sdSlopeRun', words: 'the wear rates differ from run to run' },
];

/**
 * The checks as sentences: first the curvature, always, then only what there is to say on residuals, spreads and
 * convergence, or that the residuals look normal.
 */
export function fitCheckSentences(checks: FitChecks): readonly string[] {
  const residuals = residualSentences(checks);
  return [
    curvatureSentence(checks),
    ...(residuals.length > 0 ? residuals : normalSentence(checks)),
    ...spreadSentences(checks),
    ...(checks.converged ? [] : ['The fit did not settle: treat its figures as rough.']),
  ];
}

function curvatureSentence({ curvature, distinctX }: FitChecks): string {
  if (curvature === null) {
    return distinctX < 3
      ? `Curvature cannot be tested: the readings lie at ${distinctX} different run hours, 3 are needed.`
      : 'Curvature cannot be tested: no run has readings enough to show it.';
  }
  const numbers = curvatureNumbers(curvature);
  const [way, level] = curvature.estimate_mm_per_10kh2 > 0 ? ['upward', 'low'] : ['downward', 'high'];
  if (curvature.p < FINDING) {
    return `The readings bend ${way}: ${numbers}. A straight line forecasts too ${level} a level the further ahead it looks.`;
  }
  if (curvature.p < DOUBT) return `The readings may bend ${way}: ${numbers}. More readings would tell.`;
  return `No curvature to be seen: ${numbers}.`;
}

function curvatureNumbers(curvature: Curvature): string {
  const estimate = twoDigits(curvature.estimate_mm_per_10kh2);
  const error = twoDigits(curvature.standardError_mm_per_10kh2);
  return `the quadratic term is ${estimate} mm per (10,000 h)² with a standard error of ${error} (${pWords(curvature.p)})`;
}

function residualSentences({ largest, normalScores }: FitChecks): readonly string[] {
  const sentences: string[] = [];
  if (largest !== null && largest.p < FINDING) {
    const { unit, run, x, residual_mm, standardised, p } = largest;
    const side = residual_mm > 0 ? 'above' : 'below';
    sentences.push(
      `One reading stands out: unit ${unit}, run ${run}, at ${hoursText(10_000 * x)} lies ` +
        `${twoDigits(Math.abs(residual_mm))} mm ${side} the line of its own run, ${withDecimals(Math.abs(standardised), 1)} ` +
        `standard deviations (${pWords(p)}). Check it against the record before trusting the rates.`,
    );
  }
  if (normalScores !== null && normalScores.p < FINDING) {
    sentences.push(
      `The scatter about the lines is not normal: probability-plot correlation ${correlationWords(normalScores.correlation)} ` +
        `(${pWords(normalScores.p)}). Chances far out in the tails are less certain than they look.`,
    );
  }
  return sentences;
}

function normalSentence({ largest, normalScores }: FitChecks): readonly string[] {
  if (largest === null || normalScores === null) return [];
  return [
    `The scatter about the lines looks normal: probability-plot correlation ${correlationWords(normalScores.correlation)}, ` +
      `largest residual ${withDecimals(Math.abs(largest.standardised), 1)} standard deviations.`,
  ];
}

function spreadSentences({ nearZero, boundary, oneRunAUnit }: FitChecks): readonly string[] {
  const merged = oneRunAUnit
    ? ['Every unit has one run, so that differences between units and between runs cannot be told apart.']
    : [];
  const spreads = SPREADS.filter(({ ratio }) => !oneRunAUnit || !ratio.endsWith('Run'));
  return [
    ...merged,
    ...spreads
      .filter(({ ratio, sd }) => boundary.includes(sd) || nearZero[ratio] >= MOSTLY_ZERO)
      .map(
        ({ ratio, words }) =>
          `The readings do not show that ${words}: ${percentText(nearZero[ratio], 0)} of the weight lies at a spread near zero. ` +
          'The forecasts allow for the rest.',
      ),
  ];
}

function pWords(p: number): string {
  return p < 0.0001 ? 'p below 0.0001' : `p = ${twoDigits(p)}`;
}

/** Never rounded up to 1. */
function correlationWords(correlation: number): string {
  return withDecimals(Math.min(0.999, correlation), 3);
}
