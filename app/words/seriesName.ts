import { characteristicOf } from '../../lib/analysis/combineChances';
import type { FleetResult } from '../../lib/analysis/types';

type Characteristics = FleetResult['characteristics'];

/** Name of a series for people: the characteristic's name, and which of its numbers: 'Tip clearance, turbine, smallest'. */
export function seriesName(series: string, characteristics: Characteristics): string {
  const code = characteristicOf(
    series,
    characteristics.map((characteristic) => characteristic.code),
  );
  const known = characteristics.find((characteristic) => characteristic.code === code);
  const words = (known?.name ?? code).replaceAll('_', ' ');
  const suffix = series.slice(code.length + 1);
  return capitalised(suffix === '' ? words : `${words}, ${suffix}`);
}

/** A text with a capital first letter, for the start of a sentence. */
export function capitalised(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** A name inside a sentence: its capital first letter is dropped, unless the first word is all capitals. */
export function midSentence(name: string): string {
  return /^[A-Z][a-z]/.test(name) ? name.slice(0, 1).toLowerCase() + name.slice(1) : name;
}
