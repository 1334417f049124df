const group = /(<g [^>]*>)((?:<path [^>]*\/>)+)(<\/g>)/g;
const path = /<path ([^>]*)\/>/g;
const attribute = /([\w:-]+)="([^"]*)"/g;
const absolutePoint = /([ML])(-?[\d.e-]+),(-?[\d.e-]+)/g;
const translation = /^translate\((-?[\d.e-]+),(-?[\d.e-]+)\)$/;

/**
 * The same picture of far fewer elements and bytes, for a page that carries it: marks of a layer that differ in nothing but
 * their place become one path, what is drawn with opacity 0, links and roles go, and places are rounded to a tenth of a pixel.
 *
 * @param svg text that `drawSvg` made
 */
export function lighterSvg(svg: string): string {
  return svg
    .replace(/<\/?a(?: [^>]*)?>/g, '')
    .replace(/ (?:role|aria-\w+|pointer-events)="[^"]*"/g, '')
    .replace(/<path [^>]* opacity="0"[^>]*\/>/g, '')
    .replace(group, (_, start: string, marks: string, end: string) => start + joined(marks) + end)
    .replace(/="[^"]*"/g, (value) => value.replace(/-?\d+\.\d{2,}/g, tenth));
}

function tenth(number: string): string {
  return String(Math.round(Number(number) * 10) / 10);
}

/** One path for all marks that are drawn alike, in the order of the first of each. */
function joined(marks: string): string {
  const shapes = new Map<string, string[]>();
  for (const [, text = ''] of marks.matchAll(path)) {
    const attributes = new Map([...text.matchAll(attribute)].map(([, name, value]) => [name, value]));
    const shape = placed(attributes.get('d') ?? '', attributes.get('transform'));
    attributes.delete('d');
    if (shape.isPlaced) attributes.delete('transform');
    const alike = [...attributes].map(([name, value]) => `${name}="${value}"`).join(' ');
    shapes.set(alike, [...(shapes.get(alike) ?? []), shape.d]);
  }
  return [...shapes].map(([alike, all]) => `<path d="${all.join('')}" ${alike}/>`).join('');
}

/** The shape where its translation puts it: its absolute points move, its relative steps stay. */
function placed(
  d: string,
  transform: string | undefined,
): { readonly d: string; readonly isPlaced: boolean } {
  if (transform === undefined) return { d, isPlaced: true };
  const [, x, y] = translation.exec(transform) ?? [];
  if (x === undefined || /[^MLhvZ\d.,e-]/.test(d)) return { d, isPlaced: false };
  const moved = d.replace(
    absolutePoint,
    (_, kind, left, top) => `${kind}${Number(left) + Number(x)},${Number(top) + Number(y)}`,
  );
  return { d: moved, isPlaced: true };
}
