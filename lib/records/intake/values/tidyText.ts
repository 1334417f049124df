/** Longest text that a number or date is looked for in; longer ones are prose, and held. */
export const longestCell = 120;

/**
 * A cell's text with the ends trimmed and look-alike characters made one: every space (no-break, thin) becomes a plain
 * space, every minus sign a hyphen-minus, U+2019 an apostrophe; zero-width characters go. Digits and letters stay.
 */
export function tidyText(text: string): string {
  return text
    .normalize('NFC')
    .replaceAll(/\u200B|\u200C|\u200D|\u2060|\uFEFF/g, '')
    .replaceAll(/[\p{Zs}\t]/gu, ' ')
    .replaceAll(/[\u2212\uFE63\uFF0D\u2010\u2011]/g, '-')
    .replaceAll(/[\u2019\u02BC]/g, "'")
    .trim();
}
