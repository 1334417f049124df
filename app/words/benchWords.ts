import type { BoxCheck, Conformity, Doubt, SeriesCheck, Stage } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatFixed, formatScore } from '../../lib/charts/format';
import { type LengthUnit, millimetresPer } from '../../lib/records/lengthUnits';
import { midSentence, seriesName } from './seriesName';

type Characteristics = FleetResult['characteristics'];

/** What every workshop sees to before and after it opens a unit. */
export const workshopCautions: readonly string[] = [
  'Isolate and lock out starting, fuel, oil and gas.',
  'Depressurise, and let it cool.',
  'Secure the rotor against draught: it can turn by itself.',
  'Use rated lifting gear.',
  'Count tools and parts before closing.',
];

/** What stands for the words 'as found' and 'as left'. */
export const stageNames: Readonly<Record<Stage, string>> = { found: 'as found', left: 'as left' };

/** Names of the units of measure that readings are typed in. */
export const unitNames: Readonly<Record<LengthUnit, string>> = {
  mm: 'mm',
  um: 'µm',
  in: 'in',
  mil: 'thou',
  '0.01mm': '0.01 mm',
};

const decimals: Readonly<Record<LengthUnit, number>> = { mm: 3, um: 0, in: 4, mil: 1, '0.01mm': 1 };

/** A length without its unit, in the unit of measure of the sheet. */
export function lengthIn(value_mm: number, uom: LengthUnit): string {
  return formatFixed(value_mm / millimetresPer[uom], decimals[uom]);
}

/** A length with the sheet's unit of measure: '0.312 mm', '31.2 × 0.01 mm'. */
export function lengthWords(value_mm: number, uom: LengthUnit): string {
  const times = uom === '0.01mm' ? '×\u00a0' : '';
  return `${lengthIn(value_mm, uom)}\u00a0${times}${unitNames[uom]}`;
}

/** Name of a box: 'Thrust play, as found', 'Tip clearance, turbine, as left, 12 o’clock'. */
export function boxWords(
  { characteristic, stage, clock }: Pick<BoxCheck, 'characteristic' | 'stage' | 'clock'>,
  characteristics: Characteristics,
): string {
  const name = `${seriesName(characteristic, characteristics)}, ${stageNames[stage]}`;
  return clock === null ? name : `${name}, ${clock} o’clock`;
}

/** A question about a typed reading: why it is asked, and what to do next. */
export interface DoubtWords {
  readonly reason: string;
  readonly next: string;
  /** What might have been meant, to be taken with one press; null if there is no saying. */
  readonly suggestion: string | null;
}

const digitsMeant = (suggestion: string | null) =>
  suggestion === null ? '' : ` Two digits exchanged would fit: ${suggestion}?`;

/** A doubt in words, with what is expected where it is known. */
export function doubtWords(
  doubt: Doubt,
  { expected, stage }: Pick<BoxCheck, 'expected' | 'stage'>,
  uom: LengthUnit,
): DoubtWords {
  const range =
    expected === null
      ? ''
      : ` Expected is ${lengthIn(expected.lower_mm, uom)} to ${lengthWords(expected.upper_mm, uom)} (10 to 90\u00a0%).`;
  const again = 'Measure again. If it stands, look at the contact faces and check the zero of the gauge.';
  switch (doubt.kind) {
    case 'negative':
      return {
        reason: 'A negative reading cannot be here.',
        next: 'Check the sign and the zero of the gauge.',
        suggestion: null,
      };
    case 'scale':
      return {
        reason: `Is the unit of measure right? ${doubt.suggestion} would fit (${doubt.words}).${range}`,
        next: 'Look at the gauge again: which unit does it show?',
        suggestion: doubt.suggestion,
      };
    case 'forecast':
      return {
        reason: `${formatScore(doubt.z)} standard deviations from the forecast.${range}${digitsMeant(doubt.suggestion)}`,
        next: again,
        suggestion: doubt.suggestion,
      };
    case 'set':
      return {
        reason: `The mean of the positions lies ${formatScore(doubt.z)} standard deviations from its forecast.`,
        next: again,
        suggestion: null,
      };
    case 'clock position':
      return {
        reason: `It does not fit the other positions: from them about ${lengthWords(doubt.expected_mm, uom)} is expected.${digitsMeant(doubt.suggestion)}`,
        next: 'Measure this position again, with the rotor where it was for the others.',
        suggestion: doubt.suggestion,
      };
    case 'clock positions exchanged':
      return {
        reason: `Are ${doubt.clocks.join(' and ')} o’clock exchanged? The set fits the unit’s other readings far better the other way round.`,
        next: 'Positions count as seen from the compressor end: check which is which, or measure both again.',
        suggestion: null,
      };
    case 'stages exchanged':
      return {
        reason: 'Are as found and as left exchanged? The readings fit far better the other way round.',
        next: 'Check which reading was taken before stripping.',
        suggestion: null,
      };
    case 'before stripping':
      return {
        reason: `As left less as found is ${lengthWords(doubt.difference_mm, uom)}, with no part fitted that would change it; readings of one state differ by ${lengthWords(doubt.sd_mm, uom)} (standard deviation).`,
        next:
          stage === 'left'
            ? 'Measure again. If it stands, look at the contact faces and the seating; tick the part if one was fitted.'
            : 'Measure again if the unit is still closed; tick the part if one was fitted.',
        suggestion: null,
      };
  }
}

const conformities: Readonly<Record<Conformity, string>> = {
  within: 'is within',
  'not within': 'is not within',
  'cannot be told apart': 'cannot be told apart from',
};

/** What readings say of limits and assembly range, a sentence each; what waits for further positions is not said yet. */
export function conformitySentences(
  check: SeriesCheck,
  characteristics: Characteristics,
  uom: LengthUnit,
): readonly string[] {
  const name = seriesName(check.series, characteristics);
  const value = `${name} ${lengthWords(check.value_mm, uom)}`;
  const isSaid = (conformity: Conformity) => !check.isWaiting || conformity === 'not within';
  const guard =
    check.gaugeSd_mm === null ? ' (the gauge’s uncertainty is not known, so there is no guard band)' : '';
  const limits = check.limits
    .filter(({ conformity }) => isSaid(conformity))
    .map(
      ({ kind, limit_mm, conformity }) =>
        `${value} ${conformities[conformity]} the ${kind} limit of ${lengthWords(limit_mm, uom)}${guard}.${nextStep(conformity)}`,
    );
  const { assembly } = check;
  if (assembly === null || !isSaid(assembly.conformity)) return limits;
  const range = rangeWords(assembly, uom);
  return [
    ...limits,
    `${value} ${conformities[assembly.conformity]} the assembly range of ${range}${guard}.${nextStep(assembly.conformity)}`,
  ];
}

function nextStep(conformity: Conformity): string {
  if (conformity === 'within') return '';
  return conformity === 'not within'
    ? ' Measure again; if it stands, the maker’s manual says what to do.'
    : ' It lies within the gauge’s uncertainty of it: measure again, or with a finer gauge.';
}

/** A range in words: '0.180 to 0.300 mm', 'at least 0.180 mm', 'at most 0.300 mm'. */
export function rangeWords(
  { lower_mm, upper_mm }: { readonly lower_mm: number | null; readonly upper_mm: number | null },
  uom: LengthUnit,
): string {
  if (lower_mm === null) return upper_mm === null ? 'any' : `at most ${lengthWords(upper_mm, uom)}`;
  if (upper_mm === null) return `at least ${lengthWords(lower_mm, uom)}`;
  return `${lengthIn(lower_mm, uom)} to ${lengthWords(upper_mm, uom)}`;
}

/** How many readings are questioned, for those who do not see it. */
export function questionedSentence(
  boxes: readonly BoxCheck[],
  stands: Readonly<Record<string, string>>,
  characteristics: Characteristics,
): string {
  const open = boxes.filter(({ box, doubts }) => doubts.length > 0 && stands[box] === undefined);
  if (open.length === 0) return 'No reading is questioned.';
  const named = open.map((one) => midSentence(boxWords(one, characteristics)));
  return `Questioned: ${named.join('; ')}.`;
}
