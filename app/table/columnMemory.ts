import { forget, remember, remembered } from '../frame/smallMemory';

/** Choices in force, by name, as the texts that are kept: those of a browser that keeps nothing last until the page is closed. */
const inForce = new Map<string, string>();
const listeners = new Set<() => void>();

function keptName(name: string): string {
  return `endfloat columns ${name}`;
}

/** Columns hidden from tables of a name, as one text; empty for none. */
export function hiddenText(name: string): string {
  const known = inForce.get(name);
  if (known !== undefined) return known;
  const kept = remembered(keptName(name)) ?? '';
  inForce.set(name, kept);
  return kept;
}

/** Names of columns in a text of hidden ones; what was kept by hand or by an older page and is no list hides nothing. */
export function hiddenColumns(text: string): ReadonlySet<string> {
  try {
    const list: unknown = text === '' ? [] : JSON.parse(text);
    return new Set(Array.isArray(list) ? list.filter((one) => typeof one === 'string') : []);
  } catch {
    return new Set();
  }
}

/** Hides these columns, and no others, from all tables of a name in this browser. */
export function hideColumns(name: string, ids: readonly string[]): void {
  const text = ids.length === 0 ? '' : JSON.stringify(ids);
  inForce.set(name, text);
  if (text === '') forget(keptName(name));
  else remember(keptName(name), text);
  for (const listener of listeners) listener();
}

/** Calls back whenever columns are hidden or shown; the returned function ends that. */
export function onColumnsChange(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
