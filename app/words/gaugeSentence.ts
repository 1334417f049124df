import type { GaugeRepeatability } from '../../lib/analysis/repeatability/gaugeRepeatability';
import { formatMm } from '../../lib/charts/format';
import { counted } from './counted';

/** Noise of the fits of one series: '0.012 mm', '0.011 to 0.013 mm' over its groups; null if none has one. */
export function noiseWords(noises_mm: readonly (number | null)[]): string | null {
  const known = noises_mm.flatMap((noise) => noise ?? []);
  if (known.length === 0) return null;
  const [least, most] = [formatMm(Math.min(...known)), formatMm(Math.max(...known))];
  return least === most ? least : `${least} to ${most}`;
}

/** How far readings of one series repeat, with the noise of the fits beside it. */
export function gaugeSentence(
  name: string,
  gauge: GaugeRepeatability | undefined,
  noise: string | null,
): string {
  const fits = noise === null ? '' : ` The fits of the groups put the noise of one reading at ${noise}.`;
  if (gauge === undefined)
    return `There are no pairs of readings of one state in ${name}: no run goes on over an overhaul that was read as found and as left, so the gauge cannot be told from the reassembly.${fits}`;
  const { pooled, pairs } = gauge;
  const of = counted(pairs, 'pair');
  if (pooled === null)
    return `In ${name} both readings of ${pairs === 1 ? 'the one pair' : `all ${of}`} of one state are the same: the step of the scale hides the noise.${fits}`;
  const shifts = gauge.workshops.filter(({ result }) => result?.shifted);
  const shifted = shifts
    .map(
      ({ workshop, result }) =>
        ` At ${workshop} readings as left lie ${formatMm(Math.abs(result?.meanDifference_mm ?? 0))} ${(result?.meanDifference_mm ?? 0) > 0 ? 'above' : 'below'} those as found, more than chance makes: the state was not quite the same, so its noise is less than it seems.`,
    )
    .join('');
  return `In ${name} one reading repeats within ${formatMm(pooled.sd_mm)} (standard deviation; 90\u00a0%: ${formatMm(pooled.lower_mm)} to ${formatMm(pooled.upper_mm)}), from ${of} as found and as left with nothing reset between.${shifted}${fits}`;
}
