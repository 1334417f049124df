/** One word of a text, folded, and whether it stood in brackets. */
export interface Token {
  readonly word: string;
  readonly bracketed: boolean;
}

/**
 * Folds a text so that spellings of one word meet: lower case, accents off, German ae, oe, ue, ss as ä, ö, ü, ß;
 * Norwegian ø stays itself, else 'før' would be the English 'for'.
 */
export function foldText(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/(?<!\p{L})foer(?!\p{L})/gu, 'før')
    .replaceAll('ß', 'ss')
    .replaceAll('æ', 'ae')
    .replaceAll('œ', 'oe')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/([aou])e/g, '$1')
    .replaceAll('aa', 'a');
}

/** Cuts a text into folded words at separators, camelCase humps, and between letters and digits. */
export function tokensOf(text: string): readonly Token[] {
  const open = text
    .normalize('NFKC')
    // The French article before a vowel: its l is no left.
    .replace(/(?<!\p{L})[lL]['’](?=\p{L})/gu, '')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .replace(/(\p{L}\p{M}*)(\p{N})/gu, '$1 $2')
    .replace(/(\p{N})(\p{L})/gu, '$1 $2');
  return open
    .split(/([([{][^)\]}]*[)\]}])/)
    .flatMap((part, index) => wordsOf(part).map((word): Token => ({ word, bracketed: index % 2 === 1 })));
}

function wordsOf(text: string): readonly string[] {
  return foldText(text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}
