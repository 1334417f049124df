import type { LengthUnit } from '../../lengthUnits';
import { longestCell, tidyText } from './tidyText';

/** A unit of measure written in a cell, and the cell's text without it. */
export type CellUnit =
  | { readonly kind: 'unit'; readonly text: string; readonly uom: LengthUnit }
  | { readonly kind: 'held'; readonly reason: string };

const inch = `inch(?:es)?|in\\.?|zoll|pouces?|pulgadas?|pulg\\.?|tommer?|tomme|дюйм(?:а|ов)?|"|\u2033|\u201D|''`;
const mm = 'mm\\.?|mill?im(?:et(?:er|re)s?|\u00E8tres?|etros?)|мм\\.?|миллиметр(?:а|ов)?';

/** Longer writings first: '1/100 mm' before 'mm'. Each stands after a number, with or without a space. */
const writings: readonly (readonly [string, LengthUnit])[] = [
  [`(?<=\\s)1/100(?:\\s*(?:${mm}))?`, '0.01mm'],
  [`[x*\u00D7\u00B7]\\s*(?:0[.,]01|1/100)\\s*(?:${mm})`, '0.01mm'],
  [
    `(?:hundredths?|hundertstel|centi\u00E8mes?|cent\u00E9simas?|hundredel(?:er|s)?|сотых|соток|сотки)(?:\\s*(?:${mm}))?`,
    '0.01mm',
  ],
  [`(?<=\\s)1/1000\\s*(?:${mm})`, 'um'],
  [`(?<=\\s)1/1000\\s*(?:${inch})`, 'mil'],
  [
    '[\u00B5\u03BCu]m|[\u00B5\u03BC]|my|mi[ck]r(?:on|a|ometer|ometre|om\u00E8tre|\u00F3metro)s?|мкм|мк|микрон(?:а|ов)?',
    'um',
  ],
  ['thou|mils?', 'mil'],
  [mm, 'mm'],
  [inch, 'in'],
];

const notOurs =
  "(?<=\\s)1/\\d+|[cdkn]?m|cms|yds?|ft|feet|foot|'|[\u00B5\u03BCu]in|mil\u00E9simas?|milli\u00E8mes?|tausendstel|[сдкн]?м|" +
  '%|\u00B0|deg|kg|g|bar|mbar|k?pa|n|rpm|min|s|h|hrs?';

// Not before a letter, digit, power or '/s': mm², mm3, mm/s are other quantities.
const ending = '(?![\\p{L}\\p{N}^\u00B0%]|\\s*/\\s*\\p{L})';
const after = '(?<=[\\d)*?!.,]\\s*)';
const alone = (writing: string) =>
  new RegExp(
    `${after}(?:\\[\\s*(?:${writing})\\s*\\]|\\(\\s*(?:${writing})\\s*\\)|(?:${writing})${ending})`,
    'giu',
  );

const known = writings.map(([writing, uom]) => ({ pattern: alone(writing), uom }));
const unknown = alone(notOurs);

/**
 * The unit of measure written in a cell ('21 1/100', '8.5 thou', '20 µm', '0.2 mm'), taken out of its text; null if
 * none is written; held if it is no unit of readings ('2 cm') or if there are two different ones.
 */
export function lengthUnitOfCell(text: string): CellUnit | null {
  const tidy = tidyText(text);
  if (tidy.length > longestCell || !/\d/.test(tidy)) return null;
  const found = new Set<LengthUnit>();
  let rest = tidy;
  for (const { pattern, uom } of known) {
    const without = rest.replaceAll(pattern, ' ');
    if (without !== rest) found.add(uom);
    rest = without;
  }
  const other = rest.match(unknown)?.[0];
  if (other !== undefined)
    return {
      kind: 'held',
      reason: `'${other.trim()}' is no unit that readings are taken in (mm, 0.01 mm, µm, thou, in)`,
    };
  const [uom, second] = found;
  if (uom === undefined) return null;
  if (second !== undefined)
    return { kind: 'held', reason: `two units of measure in one cell: ${uom} and ${second}` };
  return { kind: 'unit', text: rest.replaceAll(/ +/g, ' ').trim(), uom };
}
