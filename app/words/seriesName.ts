import { characteristicOf } from '../../lib/analysis/combineChances';
import type { FleetResult } from '../../lib/analysis/types';

type Characteristics = FleetResult['characteristics'];

/** Names found by lists of characteristics: a large fleet asks for the same few many thousand times. */
const found = new WeakMap<Characteristics, Map<string, string>>();

/** Name of a series for people: the characteristic's name, and which of its numbers: 'Tip clearance, turbine, smallest'. */
export function seriesName(series: string, characteristics: Characteristics): string {
  const known = found.get(characteristics) ?? new Map<string, string>();
  found.set(characteristics, known);
  const name = known.get(series) ?? madeName(series, characteristics);
  known.set(series, name);
  return name;
}

function madeName(series: string, characteristics: Characteristics): string {
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
