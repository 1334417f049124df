import type { LengthUnit } from '../../lengthUnits';
import { foldText, type Token, tokensOf } from './foldText';

/** A unit of measure that a text states; 'unknown' is a length unit that readings are not taken in, such as cm. */
export type StatedUom = LengthUnit | 'unknown';

/** Spellings with signs and fractions, set to one word before the text is cut; the first that fits wins. */
const spelled: readonly (readonly [RegExp, string])[] = [
  [/(?:1\s*\/\s*1000|0[.,]001)\s*(?:in(?:ch(?:es)?)?(?!\p{L})|["″]|zoll)/giu, ' uommil '],
  [/(?:1\s*\/\s*1000|0[.,]001)\s*(?:mm|мм)(?!\p{L})/giu, ' uommicro '],
  [/(?:1\s*\/\s*100|0[.,]01)\s*(?:in(?:ch(?:es)?)?(?!\p{L})|["″]|zoll)/giu, ' uomunknown '],
  [/(?:1\s*\/\s*10|0[.,]1)\s*(?:mm|мм)(?!\p{L})/giu, ' uomunknown '],
  [/1\s*\/\s*100(?!\d)\s*(?:e|th|tel)?\s*(?:(?:mm|мм)(?!\p{L}))?/giu, ' uomhundredth '],
  [/0[.,]01\s*(?:mm|мм)(?!\p{L})/giu, ' uomhundredth '],
  [/(?:mm|мм)\s*\/\s*100(?!\d)/giu, ' uomhundredth '],
  [/[([{]\s*(?:in\.?|["″])\s*[)\]}]/giu, ' uominch '],
  [/[([{]\s*my\s*[)\]}]/giu, ' uommicro '],
  [/(?<=[\s\d])["″]\s*$/gu, ' uominch '],
];

const words: readonly (readonly [StatedUom, string])[] = [
  [
    'mm',
    'mm мм millimetre millimetres millimeter millimeters milimetro milimetros миллиметр миллиметров миллиметры',
  ],
  [
    'um',
    'uommicro um μm μ mym micron microns mikron micrometre micrometres micrometer mikrometer micra micras micrometro micrometros мкм микрон микроны микрометр',
  ],
  ['in', 'uominch inch inches zoll pouce pouces pulgada pulgadas tomme tommer дюйм дюймы дюймов'],
  ['mil', 'uommil thou thous mil mils'],
  [
    '0.01mm',
    'uomhundredth hundredth hundredths hundertstel centieme centiemes centesima centesimas hundredel hundredeler hundredels сотые сотых',
  ],
  ['unknown', 'uomunknown cm см dm nm centimetre centimetres centimeter zentimeter tenths zehntel dixiemes'],
];

const byWord = new Map(
  words.flatMap(([uom, list]) => list.split(' ').map((word) => [foldText(word), uom] as const)),
);

/** Words that are a unit of measure only at the end of a text. */
const atTheEnd = new Map<string, StatedUom>([
  ['in', 'in'],
  ['my', 'um'],
]);

/** Takes the unit of measure out of a text: the unit, or null if none is stated, and the other words. */
export function takeUom(text: string): { readonly uom: StatedUom | null; readonly tokens: readonly Token[] } {
  const marked = spelled.reduce((rest, [form, word]) => rest.replace(form, word), text.normalize('NFKC'));
  const tokens = tokensOf(marked);
  const found = new Set<StatedUom>();
  const rest: Token[] = [];
  tokens.forEach((token, index) => {
    const uom =
      byWord.get(token.word) ?? (index === tokens.length - 1 ? atTheEnd.get(token.word) : undefined);
    if (uom === undefined) rest.push(token);
    else found.add(uom);
  });
  return { uom: settled(found), tokens: rest };
}

function settled(found: ReadonlySet<StatedUom>): StatedUom | null {
  const [only] = found;
  if (only === undefined) return null;
  if (found.size === 1) return only;
  // 'hundredths of a mm' names two units of which the fraction is meant.
  return found.size === 2 && found.has('0.01mm') && found.has('mm') ? '0.01mm' : 'unknown';
}

/** Unit of measure of a cell such as 'mm', '1/100 mm', 'thou'; null if the cell says anything else or more. */
export function uomOfWord(text: string): LengthUnit | null {
  const bare = text.trim();
  if (bare === '"' || bare === '″') return 'in';
  const { uom, tokens } = takeUom(bare);
  const spare = tokens.filter((token) => !['of', 'a', 'an', 'de', 'von', 'av'].includes(token.word));
  return uom === null || uom === 'unknown' || spare.length > 0 ? null : uom;
}
