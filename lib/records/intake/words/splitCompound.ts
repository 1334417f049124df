import type { Token } from './foldText';

/** Cuts a compound ('Verdichterspalt', 'THRUSTPLAYFOUND') into known words of 3 letters or more, if it is made of nothing else. */
export function splitCompound(token: Token, isKnown: (word: string) => boolean): readonly Token[] {
  if (token.word.length < 7 || token.word.length > 40 || isKnown(token.word)) return [token];
  const words = compound(token.word, isKnown);
  return words === null ? [token] : words.map((word) => ({ ...token, word }));
}

function compound(text: string, isKnown: (word: string) => boolean): readonly string[] | null {
  if (isKnown(text)) return [text];
  for (let length = text.length - 3; length >= 3; length -= 1) {
    const head = text.slice(0, length);
    if (!isKnown(head)) continue;
    // German joins with s, n or en: 'Turbinenspalt', 'Überholungsdatum'.
    for (const link of ['', 's', 'n', 'en']) {
      if (!text.startsWith(link, length)) continue;
      const rest = compound(text.slice(length + link.length), isKnown);
      if (rest !== null) return [head, ...rest];
    }
  }
  return null;
}
