import type { Scope } from '../../lib/analysis/scope';

const names = ['site', 'frame', 'engine', 'workshop'] as const;

/** What the address says of all that a scope leaves out. */
export const noScope: Readonly<Record<string, string>> = {
  ...Object.fromEntries(names.map((name) => [name, ''])),
  units: '',
};

/** Names of units as one text of the address, parted by commas. */
export function unitsText(units: readonly string[]): string {
  return units.map(encodeURIComponent).join(',');
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** The units that a text of the address names. */
export function unitsOf(text: string): readonly string[] {
  return text
    .split(',')
    .map((name) => decoded(name).trim())
    .filter((name) => name !== '');
}

/** The scope that an address names. */
export function scopeOf(query: URLSearchParams): Scope {
  const [site, frame, engine, workshop] = names.map((name) => query.get(name) ?? '') as [
    string,
    string,
    string,
    string,
  ];
  return { site, frame, engine, workshop, units: unitsOf(query.get('units') ?? '') };
}

/** The part of an address that names a scope: '?site=Skua+Head', empty for the whole fleet. */
export function scopeQuery(scope: Scope): string {
  const query = new URLSearchParams();
  for (const name of names) if (scope[name] !== '') query.set(name, scope[name]);
  if (scope.units.length > 0) query.set('units', unitsText(scope.units));
  const text = query.toString();
  return text === '' ? '' : `?${text}`;
}
